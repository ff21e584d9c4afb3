import { cellAt, cellAtVoltage } from "../../physics/cells/cell.ts";
import { atCell } from "../../physics/predictAny.ts";
import { around, type Handle, type Setting } from "./handle.ts";

/** Most cells looked at: more than a small vehicle carries. Our choice. */
const MOST_CELLS = 12;
/** Of the present voltage, where the cell's curve isn't known: about from an empty to a full lithium cell. Our choice. */
const [LOW_VOLTAGE, HIGH_VOLTAGE] = [0.75, 1.15];

function voltageLimits({ cell, build }: Setting): readonly [number, number] {
  const now = build.pack.openCircuitVoltage;
  if (!cell) return [LOW_VOLTAGE * now, HIGH_VOLTAGE * now];
  return around(now, cellAt(cell, 0).voltage, cellAt(cell, 1).voltage);
}

/**
 * Cells in series, voltage of each, and duty.
 *
 *     N_s 1…12;  V_oc from empty to full by the cell's curve, else 0.75…1.15 of the present;  δ 0…1
 *
 * @param setting - the build [SI] and its cell, where known
 * @returns the three handles [-, V, -]
 * @throws {OutOfRangeError} on a cell's curve that can't be
 *
 * Valid for any build. Source of the limits: the cell's curve, definition of the duty, else our choice
 */
export function electricalHandles(setting: Setting): Handle[] {
  const { build } = setting;
  const { pack, supply } = build;
  return [
    {
      key: "series",
      now: pack.series,
      limits: around(pack.series, 1, MOST_CELLS),
      whole: true,
      put: (series) => ({ ...build, pack: { ...pack, series } }),
    },
    {
      key: "cellVoltage",
      now: pack.openCircuitVoltage,
      limits: voltageLimits(setting),
      whole: false,
      put: (voltage) =>
        atCell(
          build,
          setting.cell ? cellAtVoltage(setting.cell, voltage) : { voltage, resistance: pack.cellResistance },
        ),
    },
    {
      key: "duty",
      now: supply.duty,
      limits: [0, 1],
      whole: false,
      put: (duty) => ({ ...build, supply: { ...supply, duty } }),
    },
  ];
}
