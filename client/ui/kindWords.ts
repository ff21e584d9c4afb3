import type { TestKind } from "../../shared/model/tests/index.ts";

/** A kind of test as a sentence says it. */
export const KIND_WORDS: Readonly<Record<TestKind, string>> = {
  curve: "curve test",
  pull: "pull test",
  motor: "motor test",
  leak: "leak test",
  friction: "friction test",
  thrust: "thrust test",
  discharge: "discharge test",
  "ride-height": "ride-height test",
  "weigh-in": "weigh-in",
  "run-log": "run log",
};
