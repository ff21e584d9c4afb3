import { OutOfRangeError } from "../../numeric/errors.ts";

/** Two power laws N_s = a·D_s^b, and the specific diameter at which they meet. */
const MEETING = 2.84;
const SMALL = { factor: 9, power: -2.103 } as const;
const LARGE = { factor: 3.25, power: -1.126 } as const;

/** Specific diameters over which the line is given [-]: from open axial fans to narrow centrifugal ones. */
export const CORDIER_RANGE = [0.9, 10] as const;

/**
 * Specific speed of good fans of a specific diameter: the Cordier line.
 *
 *     N_s = 9.0·D_s^−2.103 up to D_s = 2.84,  N_s = 3.25·D_s^−1.126 above
 *
 * @param diameter - D_s [-]
 * @returns N_s [-], ω in rad/s
 * @throws {OutOfRangeError} outside 0.9…10
 *
 * Valid for single-stage fans of high efficiency by total pressure; they scatter about the line by a quarter. Source: T. Wright, Fluid Machinery: Performance, Analysis, and Design, CRC Press 1999, fit to Cordier's diagram of 1953 (from memory; the two laws meet to 0.3 %)
 */
export function cordierSpeed(diameter: number): number {
  const [least, most] = CORDIER_RANGE;
  if (!(diameter >= least && diameter <= most))
    throw new OutOfRangeError("specificDiameter", diameter, `${least} to ${most}`);
  const { factor, power } = diameter <= MEETING ? SMALL : LARGE;
  return factor * diameter ** power;
}
