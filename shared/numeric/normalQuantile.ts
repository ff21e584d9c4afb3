import { OutOfRangeError } from "./errors.ts";

/** Wichura's rational approximations PPND16, ascending powers: numerator and denominator of each range. */
const CENTRE_TOP = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
  67265.7709270087, 33430.57558358813, 2509.0809287301227,
];
const CENTRE_BOTTOM = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
  28729.085735721943, 5226.495278852854,
];
const TAIL_TOP = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
];
const TAIL_BOTTOM = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
];
const FAR_TOP = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
];
const FAR_BOTTOM = [
  1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
  1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
];
const CENTRE_HALF_WIDTH = 0.425;
const TAIL_SHIFT = 1.6;
const FAR = 5;

/**
 * Value below which a given share of a standard normal distribution lies.
 *
 *     Φ(z) = p
 *
 * @param p - probability, above 0 and below 1 [-]
 * @returns z, to about 1e-15 relative [-]
 * @throws {OutOfRangeError} outside 0 < p < 1
 *
 * Valid for any p above 1e-300; near 1 the digits of 1 − p are the limit. Source: Wichura, algorithm AS 241, Applied Statistics 37 (1988) 477–484
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new OutOfRangeError("p", p, "greater than 0 and less than 1");
  const fromCentre = p - 1 / 2;
  if (Math.abs(fromCentre) <= CENTRE_HALF_WIDTH) {
    const r = CENTRE_HALF_WIDTH ** 2 - fromCentre * fromCentre;
    return fromCentre * ratio(CENTRE_TOP, CENTRE_BOTTOM, r);
  }
  const depth = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  const size =
    depth <= FAR ? ratio(TAIL_TOP, TAIL_BOTTOM, depth - TAIL_SHIFT) : ratio(FAR_TOP, FAR_BOTTOM, depth - FAR);
  return fromCentre < 0 ? -size : size;
}

function ratio(top: readonly number[], bottom: readonly number[], x: number): number {
  let [above, below] = [0, 0];
  for (let i = top.length - 1; i >= 0; i -= 1) {
    above = above * x + top[i];
    below = below * x + bottom[i];
  }
  return above / below;
}
