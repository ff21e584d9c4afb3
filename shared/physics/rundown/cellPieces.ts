import { PANEL } from "../../numeric/integral.ts";
import { openCircuitCurve } from "../pack.ts";
import type { CellInput } from "./input.ts";

/** A cell's curve from a charge down to empty, in pieces over which it is smooth and falls or rises throughout. */
export interface CellPieces {
  readonly curve: (charge: number) => number;
  /** ends of the pieces, from the charge down to 0 [-] */
  readonly charges: Float64Array;
  /** V_oc of the cell there [V] */
  readonly voltages: Float64Array;
  /** V_oc at the points of each piece's panels, the whole and its halves, piece by piece [V] */
  readonly within: Float64Array;
}

/** The panels of a piece, in shares of it: the whole, and its two halves, as {@link integral} begins. */
const PANELS = [
  [0, 1],
  [0, 0.5],
  [0.5, 1],
] as const;

/**
 * Cuts a cell's curve at its points, where its second derivative jumps.
 *
 *     z₀ and every point below it
 *
 * @param cell - its curve [-, V]
 * @param charge - z₀ [-], above 0
 * @returns the pieces [-, V]
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link openCircuitCurve}
 *
 * Valid for a monotone cubic, which falls or rises throughout between two points. Source: definition
 */
export function cellPieces(cell: Pick<CellInput, "curve">, charge: number): CellPieces {
  const curve = openCircuitCurve(cell.curve);
  const below = cell.curve.map(([z]) => z).filter((z) => z < charge);
  const charges = Float64Array.of(charge, ...below.reverse());
  const pointsOf = (from: number, to: number) =>
    PANELS.flatMap(([first, last]) =>
      PANEL.map(([share]) => curve(from + (first + share * (last - first)) * (to - from))),
    );
  const within = Array.from(charges.subarray(1), (from, i) => pointsOf(from, charges[i]));
  return {
    curve,
    charges,
    voltages: charges.map((z) => curve(z)),
    within: Float64Array.from(within.flat()),
  };
}
