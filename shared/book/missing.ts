import type { TestKind } from "../model/tests/index.ts";

/** Something a build's figures need and the book does not hold, and the test that gives it. */
export interface Missing {
  /** path in the build: "rotor", "motor", "friction" */
  readonly path: string;
  readonly message: string;
  readonly test?: TestKind;
}
