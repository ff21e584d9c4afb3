import fc from "fast-check";

/** A JSON schema as the API's description has it. */
export interface Schema {
  readonly [key: string]: unknown;
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly examples?: readonly unknown[];
  readonly default?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | Schema;
  readonly items?: Schema | boolean;
  readonly prefixItems?: readonly Schema[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly format?: string;
}

export type Named = Readonly<Record<string, Schema>>;

/** Where a record of the book is pointed to: filled in when the request is sent. */
export const reference = (collection: string): string => `@${collection}`;

const REFERENCES: Readonly<Record<string, string>> = {
  rotor: "rotors",
  motor: "motors",
  pack: "packs",
  skirt: "skirts",
  surface: "surfaces",
  build: "builds",
};

const rising = fc.array(fc.double({ min: 0.01, max: 0.4, noNaN: true }), { minLength: 1, maxLength: 4 });

/** What a schema can't say of its keys, so that most values mean something: a cell's curve rises, a rotor presses at no flow. */
const USUAL: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  curve: rising.map((steps) => [
    [0, 3],
    ...steps.map((step, i) => [(i + 1) / (steps.length + 1), 3 + (i + 1) * 0.1 + step * 0.1]),
    [1, 4.2],
  ]),
  psi: fc.tuple(
    fc.double({ min: 0.3, max: 1.5, noNaN: true }),
    fc.double({ min: -2, max: 1, noNaN: true }),
    fc.double({ min: -30, max: 0, noNaN: true }),
  ),
  version: fc.constant(1),
};

/** Keys that go together only with others, or name numbers of the record: given in one value of six. */
const SELDOM = new Set([
  "air",
  "correlated",
  "cycle",
  "estimated",
  "lossSum",
  "material",
  "thermalTimeConstant",
  "uncertainty",
]);

const [LONG_LIST, LONG_TEXT, FAR] = [4, 30, 1e6];
/** Least size of a number that must be above 0: many orders of magnitude, as far as any quantity goes. */
const TINY = 1e-9;

function numberOf(schema: Schema): fc.Arbitrary<number> {
  const { minimum, maximum, exclusiveMinimum, exclusiveMaximum } = schema;
  const low = minimum ?? (exclusiveMinimum === undefined ? -FAR : exclusiveMinimum + TINY);
  const high = maximum ?? (exclusiveMaximum === undefined ? Math.max(FAR, low) : exclusiveMaximum - TINY);
  if (schema.type === "integer") {
    const [least, most] = [Math.ceil(low), Math.floor(Math.min(high, low + FAR))];
    return fc.integer({ min: least, max: Math.max(least, most) });
  }
  const plain = fc.double({ min: low, max: high, noNaN: true });
  if (!(low > 0 || exclusiveMinimum === 0 || minimum === 0)) return plain;
  const sizes = fc.double({ min: Math.log10(Math.max(low, TINY)), max: Math.log10(high), noNaN: true });
  return fc.oneof(
    plain,
    sizes.map((power) => Math.min(high, Math.max(low, 10 ** power))),
    fc.constantFrom(low, high),
  );
}

function textOf({ format, pattern, minLength = 0, maxLength = LONG_TEXT }: Schema): fc.Arbitrary<string> {
  if (format === "date") return fc.constantFrom("2026-03-01", "2024-02-29", "1999-12-31");
  if (format === "date-time") return fc.constantFrom("2026-03-01T08:00:00.000Z", "2024-02-29T23:59:59Z");
  if (pattern !== undefined) return fc.stringMatching(new RegExp(pattern)).map((text) => text.slice(0, 64));
  return fc.string({
    minLength,
    maxLength: Math.max(minLength, Math.min(maxLength, LONG_TEXT)),
    unit: "grapheme",
  });
}

/** Makes values that a schema allows, of those schemas that the description names. */
export class Valid {
  constructor(private readonly named: Named) {}

  of(schema: Schema): fc.Arbitrary<unknown> {
    const { $ref, anyOf, oneOf, allOf, examples, type } = schema;
    if ($ref !== undefined) return this.of(this.named[$ref.split("/").at(-1) ?? ""] ?? {});
    if ("const" in schema) return fc.constant(schema.const);
    if (schema.enum) return fc.constantFrom(...schema.enum);
    if (examples) return fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...examples) }, this.made(schema));
    const options =
      anyOf ?? oneOf ?? (Array.isArray(type) ? type.map((each) => ({ ...schema, type: each })) : null);
    if (options) return fc.oneof(...options.map((option) => this.of(option)));
    if (allOf) return this.of(Object.assign({}, ...allOf));
    return this.made(schema);
  }

  private made(schema: Schema): fc.Arbitrary<unknown> {
    switch (schema.type) {
      case "object":
        return this.objectOf(schema);
      case "array":
        return this.listOf(schema);
      case "string":
        return textOf(schema);
      case "number":
      case "integer":
        return numberOf(schema);
      case "boolean":
        return fc.boolean();
      case "null":
        return fc.constant(null);
      default:
        return fc.jsonValue({ maxDepth: 1 });
    }
  }

  private listOf({
    items,
    prefixItems,
    minItems = 0,
    maxItems = LONG_LIST,
  }: Schema): fc.Arbitrary<unknown[]> {
    if (prefixItems) return fc.tuple(...prefixItems.map((each) => this.of(each)));
    const most = Math.max(minItems, Math.min(maxItems, LONG_LIST));
    const item = typeof items === "object" ? items : {};
    return fc.array(this.of(item), { minLength: minItems, maxLength: most });
  }

  private objectOf({ properties = {}, required = [], additionalProperties }: Schema): fc.Arbitrary<object> {
    const known = Object.entries(properties).map(
      ([key, inner]) => [key, this.propertyOf(key, inner)] as const,
    );
    const usual = known.filter(([key]) => required.includes(key) || !SELDOM.has(key));
    const recordOf = (entries: typeof known) =>
      fc.record(Object.fromEntries(entries), { requiredKeys: [...required] }) as fc.Arbitrary<object>;
    if (typeof additionalProperties !== "object")
      return fc.oneof({ weight: 5, arbitrary: recordOf(usual) }, recordOf(known));
    return fc.dictionary(fc.constantFrom("skirt.gap", "kv", "motor.kv", "x"), this.of(additionalProperties), {
      maxKeys: 2,
    });
  }

  private propertyOf(key: string, schema: Schema): fc.Arbitrary<unknown> {
    const collection = REFERENCES[key];
    const own = this.of(schema);
    const plain = key in USUAL ? fc.oneof({ weight: 9, arbitrary: USUAL[key] }, own) : own;
    const isId = JSON.stringify(schema).includes("identifier of a stored record");
    if (collection === undefined || !isId) return plain;
    return fc.oneof({ weight: 4, arbitrary: fc.constant<unknown>(reference(collection)) }, plain);
  }
}
