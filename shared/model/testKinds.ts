import type { TestKind } from "./tests/index.ts";

/** Every kind of bench test, without its schema: pages start with the names alone. */
export const TEST_KINDS = [
  "curve",
  "pull",
  "motor",
  "leak",
  "friction",
  "thrust",
  "discharge",
  "ride-height",
  "weigh-in",
  "run-log",
] as const satisfies readonly TestKind[];
