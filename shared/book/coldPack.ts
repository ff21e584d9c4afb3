import { coldRise } from "../physics/cells/cold.ts";
import type { Note } from "../physics/note.ts";
import { formatFixed, formatQuantity } from "../units/format.ts";
import type { PackBasis } from "./packBasis.ts";

/** Below this a cell's resistance is so much larger that it counts [K]. Common practice, no source. */
const COLD = 283.15;

/**
 * A pack as it is in a build's air: its cells as cold as that.
 *
 *     R = R_told·rise(T)/rise(T_told),  rise by the pack's stated factor, {@link coldRise}
 *
 * @param basis - of the pack, by its tests or its page
 * @param temperature - of the build's air [K]
 * @returns the same with the cell's resistance there [Ω]; unchanged where no factor is stated
 * @throws {OutOfRangeError} as {@link coldRise}
 *
 * Valid as {@link coldRise}. Source: docs/method/run-down.md
 */
export function packInAir(basis: PackBasis, temperature: number): PackBasis {
  const { coldFactor, toldAt, cell } = basis;
  if (coldFactor === null) return basis;
  const rise = coldRise(coldFactor, temperature) / coldRise(coldFactor, toldAt);
  const resistanceCurve = cell.resistanceCurve?.map(([charge, each]) => [charge, rise * each] as const);
  return { ...basis, rise, cell: { ...cell, resistance: cell.resistance * rise, resistanceCurve } };
}

/** @returns what the cold makes of a pack, or that nobody has said it; none in warm air */
export function coldNotes(
  { rise, coldFactor }: Pick<PackBasis, "rise" | "coldFactor">,
  temperature: number,
): Note[] {
  const air = formatQuantity(temperature, "temperature", { decimals: 0 });
  if (coldFactor !== null && rise > 1) {
    const message = `In air of ${air} the cells' resistance counts ${formatFixed(rise, 2)} times what was measured or stated, by the pack's factor for the cold.`;
    return [{ code: "cold-cells", message }];
  }
  if (coldFactor !== null || temperature >= COLD) return [];
  const message = `In air of ${air} cells have more resistance than at 20 °C, two to three times at freezing (common practice, no source), and by how much this pack's have isn't stated: the margins come out too high. State it on the pack's page.`;
  return [{ code: "cold-cells-unknown", message }];
}
