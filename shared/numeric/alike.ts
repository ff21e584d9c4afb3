/**
 * Whether two pieces of plain data say the same, their numbers to within rounding.
 *
 *     |a − b| ≤ tolerance·max(|a|, |b|)
 *
 * @param a - numbers, text, lists and objects of them [-]
 * @param b - the same [-]
 * @param tolerance - relative, of each number [-]
 * @returns true where every number agrees and all else is equal; a key without a value counts as no key
 *
 * Valid for data without cycles. Source: definition
 *
 * @example
 * alike({ a: [1, 2] }, { a: [1, 2 + 1e-12] }, 1e-9); // → true
 * alike({ a: [1, 2] }, { a: [1, 2.1] }, 1e-9); // → false
 */
export function alike(a: unknown, b: unknown, tolerance: number): boolean {
  if (typeof a === "number" && typeof b === "number")
    return a === b || Math.abs(a - b) <= tolerance * Math.max(Math.abs(a), Math.abs(b));
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [ofA, ofB] = [a, b].map((each) => each as Readonly<Record<string, unknown>>);
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => alike(ofA[key], ofB[key], tolerance));
}
