import { expect } from "vitest";

interface RelativeMatchers<R = unknown> {
  /** Passes when |received − expected| ≤ tolerance·|expected|. */
  toBeCloseToRelative(expected: number, tolerance: number): R;
}

declare module "vitest" {
  // biome-ignore lint/suspicious/noExplicitAny: vitest declares the parameter so
  interface Matchers<T = any> extends RelativeMatchers<T> {}
}

expect.extend({
  toBeCloseToRelative(received: number, expected: number, tolerance: number) {
    const error = Math.abs(received - expected) / Math.abs(expected);
    return {
      pass: error <= tolerance,
      message: () => `${received} against ${expected}: relative error ${error}, allowed ${tolerance}`,
    };
  },
});
