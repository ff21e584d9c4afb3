type Coefficients = readonly number[];

/** Cody's rational approximations, highest power first: numerator and denominator of each range. */
const SMALL_TOP = [
  0.18577770618460315, 3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694,
];
const SMALL_BOTTOM = [1, 23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171];
const MIDDLE_TOP = [
  2.1531153547440383e-8, 0.5641884969886701, 8.883149794388375, 66.11919063714163, 298.6351381974001,
  881.952221241769, 1712.0476126340707, 2051.0783778260716, 1230.3393547979972,
];
const MIDDLE_BOTTOM = [
  1, 15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037493,
];
const LARGE_TOP = [
  0.016315387137302097, 0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.01608378514874228,
  0.0006587491615298378,
];
const LARGE_BOTTOM = [
  1, 2.568520192289822, 1.8729528499234671, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
];
const SMALL = 0.46875;
const LARGE = 4;
const INVERSE_ROOT_PI = 0.5641895835477563;

/**
 * The error function near 0.
 *
 *     erf x = (2/√π) ∫₀ˣ exp(−t²) dt
 *
 * @param x - argument, |x| ≤ 0.46875 [-]
 * @returns erf x [-]
 *
 * Valid for |x| ≤ 0.46875, to about 1e-16 relative.
 * Source: Cody, Mathematics of Computation 23 (1969) 631–637
 */
export function erfNearZero(x: number): number {
  const square = x * x;
  return (x * five(SMALL_TOP, square)) / five(SMALL_BOTTOM, square);
}

/**
 * The complementary error function without its exponential.
 *
 *     erfcx x = exp(x²)·erfc x
 *
 * @param x - argument, ≥ 0 [-]
 * @returns erfcx x, between 1 and 0 [-]
 *
 * Valid for x ≥ 0, to about 1e-15 relative. Source: Cody, Mathematics of Computation 23 (1969) 631–637
 */
export function scaledErfc(x: number): number {
  if (x <= SMALL) return Math.exp(x * x) * (1 - erfNearZero(x));
  if (x <= LARGE) return nine(MIDDLE_TOP, x) / nine(MIDDLE_BOTTOM, x);
  const inverseSquare = 1 / x / x;
  const ratio = six(LARGE_TOP, inverseSquare) / six(LARGE_BOTTOM, inverseSquare);
  return (INVERSE_ROOT_PI - inverseSquare * ratio) / x;
}

/** Horner's rule without a loop: asked millions of times by a likelihood. */
function five(c: Coefficients, x: number): number {
  return (((c[0] * x + c[1]) * x + c[2]) * x + c[3]) * x + c[4];
}

function six(c: Coefficients, x: number): number {
  return five(c, x) * x + c[5];
}

function nine(c: Coefficients, x: number): number {
  return ((six(c, x) * x + c[6]) * x + c[7]) * x + c[8];
}
