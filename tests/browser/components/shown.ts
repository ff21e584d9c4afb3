import type { ComponentChildren } from "preact";

/** A component in one of its states. */
export interface Shown {
  /** its name in the code */
  readonly component: string;
  readonly state: string;
  readonly drawn: ComponentChildren;
}
