import { OutOfRangeError } from "../../numeric/errors.ts";
import type { Note } from "../note.ts";

/** Least factor on speed for a printed rotor, four in stress: layers, notches and heat all take their part. Common practice, no source. */
export const LEAST_SPEED_FACTOR = 2;

/**
 * What to know about a rotor that runs near its strength.
 *
 *     notes at a factor on speed below 1 and below 2
 *
 * @param factor - √(strength/σ) at the speed in question, > 0; infinite at rest [-]
 * @returns the note, or none [-]
 * @throws {OutOfRangeError} on a factor that is not above 0
 *
 * Valid for printed rotors. Source: common practice, no source
 */
export function rotorStrengthNotes(factor: number): Note[] {
  if (!(factor > 0)) throw new OutOfRangeError("speedFactor", factor, "greater than 0");
  if (factor < 1)
    return [
      {
        code: "rotor-bursts",
        message: `The rotor reaches its strength at ${(100 * factor).toFixed(0)} % of this speed: it will burst.`,
      },
    ];
  if (factor >= LEAST_SPEED_FACTOR) return [];
  return [
    {
      code: "rotor-near-strength",
      message: `The rotor bursts at ${factor.toFixed(2)} times this speed; ${LEAST_SPEED_FACTOR} is the least to aim for.`,
    },
  ];
}
