import { OutOfRangeError, requirePositive } from "../../numeric/errors.ts";

/** Ackeret: half of the losses follow the Reynolds number, with this power. */
const ACKERET = { share: 0.5, power: 0.2 } as const;

/**
 * Reynolds number of a rotor.
 *
 *     Re = u·D·ρ/μ
 *
 * @param tipSpeed - u [m/s], > 0
 * @param diameter - D [m], > 0
 * @param density - ρ [kg/m³], > 0
 * @param viscosity - μ [Pa·s], > 0
 * @returns Re [-]
 * @throws {OutOfRangeError} on a number that is not finite and above 0
 *
 * Valid for comparing rotors of one family. Source: ISO 13348 (from memory)
 */
export function rotorReynolds(
  tipSpeed: number,
  diameter: number,
  density: number,
  viscosity: number,
): number {
  requirePositive("rotor.tipSpeed", tipSpeed);
  requirePositive("rotor.diameter", diameter);
  requirePositive("air.density", density);
  return (tipSpeed * diameter * density) / requirePositive("air.viscosity", viscosity);
}

/**
 * Efficiency of a rotor of the family at another Reynolds number.
 *
 *     (1 − η₂)/(1 − η₁) = ½[1 + (Re₁/Re₂)^0.2]
 *
 * @param efficiency - η₁, tested, at its peak [-], 0 < η₁ < 1
 * @param testedReynolds - Re₁ [-], > 0
 * @param reynolds - Re₂ [-], > 0
 * @returns η₂ [-]
 * @throws {OutOfRangeError} on an efficiency beyond 0…1, a Reynolds number that is not above 0 or so small that nothing is left
 *
 * Valid near best efficiency. Rotors of some centimetres (Re 10⁴–10⁵) lie below the range the formula was made for; its source gives no range.
 * Source: Ackeret (1948), in Mühlemann, Schweizerische Bauzeitung 66; named by ISO 13348 (formula from memory)
 */
export function ackeretEfficiency(efficiency: number, testedReynolds: number, reynolds: number): number {
  if (!(efficiency > 0 && efficiency < 1))
    throw new OutOfRangeError("peak efficiency", efficiency, "between 0 and 1");
  const ratio = requirePositive("testedReynolds", testedReynolds) / requirePositive("reynolds", reynolds);
  const scaled = 1 - (1 - efficiency) * (1 - ACKERET.share + ACKERET.share * ratio ** ACKERET.power);
  if (!(scaled > 0))
    throw new OutOfRangeError(
      "rotor.sizeCorrection",
      reynolds,
      "a Reynolds number at which some efficiency is left; without the correction there is an answer",
    );
  return scaled;
}

/**
 * Factor on the whole ψ curve for a rotor of another Reynolds number; λ keeps.
 *
 *     ψ₂/ψ₁ = η₂/η₁
 *
 * @param efficiency - η₁, tested, at its peak [-], 0 < η₁ < 1
 * @param testedReynolds - Re₁ [-], > 0
 * @param reynolds - Re₂ [-], > 0
 * @returns factor [-]; exactly 1 at the tested Reynolds number
 * @throws {OutOfRangeError} as {@link ackeretEfficiency}
 *
 * Valid as {@link ackeretEfficiency}. Source: as there; one factor at peak efficiency for the whole curve is a choice
 */
export function sizeCorrectionFactor(efficiency: number, testedReynolds: number, reynolds: number): number {
  return ackeretEfficiency(efficiency, testedReynolds, reynolds) / efficiency;
}
