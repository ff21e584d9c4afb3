import { expect } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";

/** Passes when the call throws OutOfRangeError for this quantity. */
export function expectOutOfRange(call: () => unknown, quantity: string): void {
  let caught: unknown = null;
  try {
    call();
  } catch (error) {
    caught = error;
  }
  expect(caught).toBeInstanceOf(OutOfRangeError);
  expect(caught).toMatchObject({ code: "out-of-range", quantity });
}
