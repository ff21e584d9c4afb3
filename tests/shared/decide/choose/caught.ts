import { expect } from "vitest";

/** @returns the error that a call throws, of the class that is expected */
export function caught<E extends Error>(call: () => unknown, type: abstract new (...args: never[]) => E): E {
  try {
    call();
  } catch (error) {
    if (error instanceof type) return error;
    throw error;
  }
  return expect.fail(`nothing was thrown where ${type.name} was expected`);
}
