import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import type { Operation } from "./request.ts";

interface Content {
  readonly [type: string]: { readonly schema?: object };
}

interface Stated {
  readonly $ref?: string;
  readonly content?: Content;
}

/** The description, as far as answers are held to it. */
export interface AnswersStated {
  readonly paths: Readonly<
    Record<string, Readonly<Record<string, { readonly responses: Readonly<Record<string, Stated>> }>>>
  >;
  readonly components: { readonly responses: Readonly<Record<string, Stated>>; readonly schemas: object };
}

/** What came back. */
export interface Answer {
  readonly status: number;
  readonly type: string;
  readonly body: unknown;
}

const DOCUMENT = "gripcurve";

/** Says what of an answer the API's description doesn't say. */
export class Judge {
  private readonly ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: false });
  private readonly checks = new Map<object, ValidateFunction>();

  constructor(private readonly stated: AnswersStated) {
    const { schemas } = stated.components;
    this.ajv.addSchema({ $id: DOCUMENT, components: { schemas: this.absolute(schemas) } });
  }

  /** @returns what is wrong, in words; null where the answer is as described */
  fault({ method, path }: Operation, { status, type, body }: Answer): string | null {
    if (status >= 500) return `status ${status}`;
    const found = this.stated.paths[path][method.toLowerCase()].responses[String(status)];
    if (!found) return `status ${status} is not described`;
    const { content } = found.$ref
      ? this.stated.components.responses[found.$ref.split("/").at(-1) ?? ""]
      : found;
    if (!content) return null;
    const [kind] = type.split(";");
    if (!(kind in content)) return `${kind} where ${Object.keys(content).join()} is described`;
    const { schema } = content[kind];
    if (!schema || !kind.endsWith("json")) return null;
    const check = this.checkOf(schema);
    return check(body) ? null : this.ajv.errorsText(check.errors);
  }

  private checkOf(schema: object): ValidateFunction {
    const known = this.checks.get(schema);
    if (known) return known;
    const made = this.ajv.compile(this.absolute(schema));
    this.checks.set(schema, made);
    return made;
  }

  private absolute<T extends object>(schema: T): T {
    return JSON.parse(JSON.stringify(schema).replaceAll('"#/components', `"${DOCUMENT}#/components`));
  }
}
