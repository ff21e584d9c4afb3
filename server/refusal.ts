import type { FieldError } from "../shared/model/api/errors.ts";

/** A request that is refused, with everything that the answer needs. */
export class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
    message: string,
    readonly fields: readonly FieldError[] = [],
    readonly headers: Readonly<Record<string, string>> = {},
  ) {
    super(message);
    this.name = "Refusal";
  }
}
