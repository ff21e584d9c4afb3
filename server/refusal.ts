import type { FieldError } from "../shared/model/api/errors.ts";

/** What a refusal says, as plain data. */
export interface Refused {
  readonly status: number;
  readonly code: string;
  readonly message: string;
  readonly fields: readonly FieldError[];
  readonly headers: Readonly<Record<string, string>>;
}

/** A request that is refused, with everything that the answer needs. */
export class Refusal extends Error implements Refused {
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

  /** @returns the same as an error, after it came from another thread */
  static from({ status, code, message, fields, headers }: Refused): Refusal {
    return new Refusal(status, code, message, fields, headers);
  }

  get said(): Refused {
    const { status, code, message, fields, headers } = this;
    return { status, code, message, fields, headers };
  }
}
