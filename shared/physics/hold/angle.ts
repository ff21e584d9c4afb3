/**
 * Sine of an angle in degrees, exact where it is 0, ±½ or ±1.
 *
 *     sin(α·π/180)
 *
 * @param degrees - α [°]
 * @returns sine [-]; a multiple of 180° gives exactly 0
 *
 * Valid for any finite angle. Source: symmetry of the sine
 */
export function sineOfDegrees(degrees: number): number {
  const turn = degrees % 360;
  const size = Math.abs(turn);
  const half = size > 180 ? size - 180 : size;
  const quarter = half > 90 ? 180 - half : half;
  const value = firstQuarterSine(quarter);
  if (value === 0) return 0;
  return turn < 0 !== size > 180 ? -value : value;
}

/**
 * Cosine of an angle in degrees, exact where it is 0, ±½ or ±1.
 *
 *     cos(α·π/180)
 *
 * @param degrees - α [°]
 * @returns cosine [-]; an odd multiple of 90° gives exactly 0
 *
 * Valid for any finite angle. Source: cos α = sin(90° − α)
 */
export function cosineOfDegrees(degrees: number): number {
  return sineOfDegrees(90 - (degrees % 360));
}

function firstQuarterSine(degrees: number): number {
  if (degrees === 30) return 0.5;
  if (degrees === 60) return Math.sqrt(3) / 2;
  return Math.sin((degrees * Math.PI) / 180);
}
