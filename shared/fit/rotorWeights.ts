import { differentiatePolynomial, evaluatePolynomial } from "../numeric/polynomial.ts";
import { type RotorReadingPoint, rotorPoints } from "./rotorPoints.ts";

/** Standard uncertainties of one row's instruments. */
export interface ReadingUncertainty {
  /** of the pressure [Pa], > 0 */
  readonly pressure: number;
  /** of the speed, relative [-] */
  readonly speed: number;
  /** of the flow meter, or of the plate's discharge coefficient, relative [-] */
  readonly flow: number;
  /** whether the flow follows from the same pressure reading (bleed plate): Q ∝ √Δp */
  readonly flowFromPressure: boolean;
}

/**
 * Weights of curve readings whose flow is uncertain as well as their pressure: effective variance.
 *
 *     u² = [(ψ − ½ψ'φ)·u(Δp)/Δp]² + [(2ψ − ψ'φ)·u(n)/n]² + [ψ'φ·u(Q)/Q]²,  w = 1/u²;  without a plate the first term is ψ alone
 *
 * @param diameter - of the rotor, unless a reading carries its own [m]
 * @param readings - rows as {@link rotorPoints} takes them
 * @param doubts - one for each row: pressure [Pa], speed and flow [relative]
 * @param psi - a first fit of the same rows, ascending powers of φ [-]
 * @returns weights on the squared residuals of ψ [-]
 * @throws {OutOfRangeError} as {@link rotorPoints}
 *
 * Valid where the uncertainties are small against the curve's own shape. Source: effective variance, Orear, American Journal of Physics 50 (1982) 912–916; JCGM 100:2008, 5.1.2
 */
export function rotorWeights(
  diameter: number,
  readings: readonly RotorReadingPoint[],
  doubts: readonly ReadingUncertainty[],
  psi: readonly number[],
): number[] {
  const slope = differentiatePolynomial(psi);
  return rotorPoints(diameter, readings).map(({ phi }, i) => {
    const doubt = doubts[i];
    const height = Math.abs(evaluatePolynomial(psi, phi));
    const fall = evaluatePolynomial(slope, phi) * phi;
    const pressure = Math.max(Math.abs(readings[i].pressure), doubt.pressure);
    const gauge = (height - (doubt.flowFromPressure ? fall / 2 : 0)) * (doubt.pressure / pressure);
    const tachometer = (2 * height - fall) * doubt.speed;
    const meter = fall * doubt.flow;
    return 1 / (gauge ** 2 + tachometer ** 2 + meter ** 2);
  });
}
