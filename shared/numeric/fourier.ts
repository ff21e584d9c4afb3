import { OutOfRangeError } from "./errors.ts";

/** Reverses the order of the bits of each place: the order in which the halves of the halves lie. */
function reorder(re: Float64Array, im: Float64Array): void {
  for (let i = 1, j = 0; i < re.length; i++) {
    let bit = re.length >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i >= j) continue;
    [re[i], re[j]] = [re[j], re[i]];
    [im[i], im[j]] = [im[j], im[i]];
  }
}

/**
 * Discrete Fourier transform, in place.
 *
 *     X_k = Σ x_n e^(−2πi kn/N)
 *
 * @param re - real parts; their count a power of 2 [any unit]
 * @param im - imaginary parts, as many [the same unit]
 * @returns nothing: the transform takes the place of what was given [the same unit]
 * @throws {OutOfRangeError} on a count that is no power of 2, or lists of unlike length
 *
 * Valid for any values; rounding grows with log₂ N. Source: Cooley & Tukey, Mathematics of Computation 19 (1965) 297
 */
export function fourier(re: Float64Array, im: Float64Array): void {
  const count = re.length;
  if (count < 2 || (count & (count - 1)) !== 0)
    throw new OutOfRangeError("count of samples", count, "a power of 2, at least 2");
  if (im.length !== count) throw new OutOfRangeError("count of imaginary parts", im.length, `${count}`);
  reorder(re, im);
  for (let size = 2; size <= count; size *= 2) {
    const half = size / 2;
    for (let k = 0; k < half; k++) {
      const angle = (-2 * Math.PI * k) / size;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      for (let i = k; i < count; i += size) {
        const [a, b] = [re[i + half], im[i + half]];
        const [x, y] = [a * c - b * s, a * s + b * c];
        re[i + half] = re[i] - x;
        im[i + half] = im[i] - y;
        re[i] += x;
        im[i] += y;
      }
    }
  }
}
