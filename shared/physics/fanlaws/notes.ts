import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { formatFixed, formatQuantity } from "../../units/format.ts";
import type { Note } from "../note.ts";

/** ISO 5801 (from memory) takes air as incompressible up to this [Pa]. */
const INCOMPRESSIBLE_UP_TO = 2000;
/** Mach number of the tips above which density changes by more than about 5 %. Common practice, no source. */
const MACH_LIMIT = 0.3;
/** Clearance ratios closer than this count as scaled along. Common practice, no source. */
const CLEARANCE_TOLERANCE = 0.1;

export interface TipClearance {
  /** between blade tip and shroud [m] */
  readonly clearance: number;
  /** D [m] */
  readonly diameter: number;
}

/**
 * Warns where the tip clearance was not scaled with the rotor.
 *
 *     s₂/D₂ against s₁/D₁, a note where they differ by more than a tenth
 *
 * @param tested - clearance and diameter of the tested rotor [m]
 * @param used - clearance and diameter of the rotor in the build [m]
 * @returns the note, or none [-]
 * @throws {OutOfRangeError} on a negative clearance, a diameter that is not above 0
 *
 * Valid for axial rotors and for centrifugal ones without a shroud. Source: fan laws hold for geometrically alike rotors
 */
export function clearanceNotes(tested: TipClearance, used: TipClearance): Note[] {
  const before = clearanceRatio(tested);
  const now = clearanceRatio(used);
  if (Math.abs(now - before) <= CLEARANCE_TOLERANCE * before) return [];
  const percent = (ratio: number) => `${formatFixed(100 * ratio, 2)} %`;
  return [
    {
      code: "tip-clearance-not-scaled",
      message: `The tip clearance is ${percent(now)} of the diameter, ${percent(before)} in the test: expect ${now > before ? "less" : "more"} pressure than the curve gives.`,
    },
  ];
}

function clearanceRatio({ clearance, diameter }: TipClearance): number {
  return requireNonNegative("rotor.tipClearance", clearance) / requirePositive("rotor.diameter", diameter);
}

/**
 * Warns where the air no longer counts as incompressible.
 *
 *     notes at Δp > 2 kPa and at u/a > 0.3
 *
 * @param pressure - suction Δp [Pa], ≥ 0
 * @param tipSpeed - u [m/s], ≥ 0
 * @param soundSpeed - a [m/s], > 0
 * @returns the notes, none below both [-]
 * @throws {OutOfRangeError} on a number out of its range
 *
 * Valid for air. Source: ISO 5801 (2 kPa, from memory); Mach 0.3 is common practice, no source
 */
export function compressibilityNotes(pressure: number, tipSpeed: number, soundSpeed: number): Note[] {
  const notes: Note[] = [];
  if (requireNonNegative("pressure", pressure) > INCOMPRESSIBLE_UP_TO)
    notes.push({
      code: "compressible-pressure",
      message: `At ${formatQuantity(pressure, "pressure", { decimals: 0 })} the air's compressibility, which is left out, starts to count (above ${formatQuantity(INCOMPRESSIBLE_UP_TO, "pressure", { decimals: 0 })}).`,
    });
  const mach = requireNonNegative("rotor.tipSpeed", tipSpeed) / requirePositive("air.soundSpeed", soundSpeed);
  if (mach > MACH_LIMIT)
    notes.push({
      code: "tip-mach-high",
      message: `The blade tips run at Mach ${formatFixed(mach, 2)}, above ${MACH_LIMIT}: the fan laws hold less and less.`,
    });
  return notes;
}
