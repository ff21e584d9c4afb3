import { NoAnswerError } from "../../numeric/errors.ts";

/** One part to try that can't be solved with, and why. */
export interface Unusable {
  /** of the request: "motors.2" */
  readonly path: string;
  readonly message: string;
}

/** Parts are to be tried that can't be solved with: nothing was solved. */
export class UnusablePartsError extends NoAnswerError {
  readonly code = "unusable-parts";
  constructor(readonly fields: readonly Unusable[]) {
    const [first] = fields;
    const more = fields.length > 1 ? ` (and ${fields.length - 1} more)` : "";
    super(`${first.path}: ${first.message}${more}`);
    this.name = "UnusablePartsError";
  }
}
