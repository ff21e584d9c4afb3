import { firstPositiveZero } from "../../numeric/polynomial.ts";
import type { Note } from "../note.ts";
import type { RotorInput } from "./machine.ts";
import { peakEfficiency } from "./sizeLaw.ts";

/** Code of the note on a curve that gives out more than it takes in. */
export const EFFICIENCY_ABOVE_ONE = "efficiency-above-one";
const PERCENT = 100;

/**
 * What to say of a curve that gives out more power than it takes in: an input that cannot be.
 *
 *     max φψ/λ ≥ 1 on 0…φ_end
 *
 * @param curve - ψ and λ by rising powers of φ, end of the tested range [-]
 * @returns the note, or none [-]
 *
 * Valid where λ > 0. Source: definition of η
 */
export function efficiencyNotes(curve: Pick<RotorInput, "psi" | "lambda" | "phiMax">): Note[] {
  const peak = peakEfficiency(curve, firstPositiveZero(curve.psi) ?? Number.POSITIVE_INFINITY);
  if (!(peak >= 1)) return [];
  const message = `The curve's best efficiency would be ${(PERCENT * peak).toFixed(0)} %: pressure and power do not belong together, check the shaft power.`;
  return [{ code: EFFICIENCY_ABOVE_ONE, message }];
}
