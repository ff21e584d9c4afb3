import { studentQuantile } from "../../numeric/student.ts";

const [SHARE, NORMAL] = [0.95, 1.6448536269514722];

/**
 * A covariance that is drawn from as a normal one, although it is estimated from few residuals.
 *
 *     C·(t₀.₉₅(ν)/1.645)²
 *
 * @param covariance - of a fit [product of two units]
 * @param dof - degrees of freedom that its residual sd has [-]
 * @returns the covariance whose normal 5 to 95 % range is as wide as Student's [product of two units]; the same without any freedom
 *
 * Valid for the 90 % range. Source: JCGM 100:2008 (GUM), G.3; Student's distribution
 */
export function widened(covariance: readonly (readonly number[])[], dof: number): number[][] {
  const factor = dof > 0 ? (studentQuantile(SHARE, dof) / NORMAL) ** 2 : 1;
  return covariance.map((row) => row.map((value) => value * factor));
}
