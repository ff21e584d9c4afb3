/** A question that can't be answered for the numbers it stands on, not for a fault of the code: its message says why. */
export abstract class NoAnswerError extends Error {
  abstract readonly code: string;
}

/** An answer, or in a sentence why there is none. */
export type Answer<T> = { readonly answered: T } | { readonly problem: string };

/** @returns what was computed, or why its numbers have no answer @throws whatever is a fault of the code */
export function asProblem<T>(compute: () => T): Answer<T> {
  try {
    return { answered: compute() };
  } catch (error) {
    if (!(error instanceof NoAnswerError)) throw error;
    return { problem: error.message.replace(/\.?$/, ".") };
  }
}

/** @returns what was computed; null where its numbers have no answer */
export function answerOrNull<T>(compute: () => T): T | null {
  const answer = asProblem(compute);
  return "answered" in answer ? answer.answered : null;
}

/** A number handed to a function lies outside what the relation allows. */
export class OutOfRangeError extends NoAnswerError {
  readonly code = "out-of-range";
  constructor(
    /** what the number is, in the caller's words or as a path ("skirt.gap") */
    readonly quantity: string,
    readonly value: number,
    /** what is allowed, in words ("greater than 0") */
    readonly allowed: string,
  ) {
    super(`${quantity} is ${value}, allowed: ${allowed}`);
    this.name = "OutOfRangeError";
  }
}

/** The data given cannot answer the question; `need` says what to measure next. */
export class NotEnoughDataError extends NoAnswerError {
  readonly code = "not-enough-data";
  constructor(
    message: string,
    /** what to measure next, one sentence */
    readonly need: string,
    /** path of the input that is short of data */
    readonly path = "",
  ) {
    super(`${message} ${need}`.trim());
    this.name = "NotEnoughDataError";
  }
}

/** An iteration ended without an answer it stands behind. */
export class NoConvergenceError extends NoAnswerError {
  readonly code = "no-convergence";
  constructor(
    message: string,
    readonly iterations: number,
  ) {
    super(message);
    this.name = "NoConvergenceError";
  }
}

/** @returns the value itself [its own unit] when it is finite and > 0 @throws {OutOfRangeError} otherwise, NaN included */
export function requirePositive(quantity: string, value: number): number {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError(quantity, value, "finite, greater than 0");
  return value;
}

/** @returns the value itself [its own unit] when it is finite and ≥ 0 @throws {OutOfRangeError} otherwise, NaN included */
export function requireNonNegative(quantity: string, value: number): number {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError(quantity, value, "finite, 0 or greater");
  return value;
}

/** @returns the value itself [its own unit] when it is finite @throws {OutOfRangeError} otherwise, NaN included */
export function requireFinite(quantity: string, value: number): number {
  if (!Number.isFinite(value)) throw new OutOfRangeError(quantity, value, "a finite number");
  return value;
}

/** @throws {OutOfRangeError} naming `quantity[i]`, the first of the values that is not finite */
export function requireAllFinite(quantity: string, values: ArrayLike<number>): void {
  for (let i = 0; i < values.length; i += 1)
    if (!Number.isFinite(values[i])) requireFinite(`${quantity}[${i}]`, values[i]);
}
