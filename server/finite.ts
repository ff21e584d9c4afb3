/** An answer would hold NaN or infinity, which JSON would quietly turn into null. */
export class NotFiniteError extends Error {
  readonly code = "not-finite";
  constructor(
    readonly key: string,
    readonly value: number,
  ) {
    super(
      `With these inputs "${key}" comes out as ${value}; no answer is given that has such a number in it.`,
    );
    this.name = "NotFiniteError";
  }
}

/** As a JSON replacer: lets every value through but numbers that JSON can't say. @throws {NotFiniteError} */
export function onlyFinite(key: string, value: unknown): unknown {
  if (typeof value === "number" && !Number.isFinite(value)) throw new NotFiniteError(key, value);
  return value;
}
