import { z } from "zod";
import { errorResponse } from "../shared/model/api/errors.ts";
import { COLLECTION_NAMES, COLLECTION_WORDS } from "../shared/model/collections.ts";
import { COLLECTIONS } from "../shared/model/schemas.ts";

export type Json = Readonly<Record<string, unknown>>;

/** "running gear" → "RunningGear" */
const capitalised = (word: string): string =>
  word.replace(/(?:^|\s+)(\w)/g, (_, first: string) => first.toUpperCase());

/** Schemas that the document states once, under these names. */
const NAMES = new Map<z.core.$ZodType, string>([
  [errorResponse, "Error"],
  ...COLLECTION_NAMES.map((name) => [COLLECTIONS[name], capitalised(COLLECTION_WORDS[name])] as const),
]);

/** Descriptions and examples as the schemas carry them, with the names above. */
class NamedSchemas extends z.core.$ZodRegistry<z.core.GlobalMeta> {
  override get<S extends z.core.$ZodType>(schema: S) {
    const known = z.globalRegistry.get(schema);
    const id = NAMES.get(schema);
    return (id === undefined ? known : { ...known, id }) as ReturnType<
      z.core.$ZodRegistry<z.core.GlobalMeta>["get"]
    >;
  }
}

type Direction = "input" | "output";

/** What a client sends may leave out what has a default; what it gets has everything. */
const nameIn = (name: string, io: Direction): string => (io === "input" ? `${name}Input` : name);

function withReferences(value: unknown, io: Direction): unknown {
  if (Array.isArray(value)) return value.map((inner) => withReferences(inner, io));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      key === "$ref" ? hoisted(inner, io) : withReferences(inner, io),
    ]),
  );
}

/** A definition's place in the document. */
const hoisted = (reference: unknown, io: Direction): string =>
  `#/components/schemas/${nameIn(String(reference).replace("#/$defs/", ""), io)}`;

/** Turns zod's schemas into those of one OpenAPI document; whatever has a name is referred to. */
export class DocumentSchemas {
  readonly #registry = new NamedSchemas();
  readonly #components = new Map<string, Json>();

  /** @returns the schema as it stands in the document */
  of(schema: z.ZodType, io: Direction): Json {
    // Inside a list even a named schema is referred to.
    const listed = z.toJSONSchema(z.array(schema), {
      io,
      unrepresentable: "any",
      reused: "inline",
      metadata: this.#registry,
    });
    for (const [name, { id: _name, ...definition }] of Object.entries(listed.$defs ?? {})) {
      this.#components.set(nameIn(name, io), withReferences(definition, io) as Json);
    }
    return withReferences(listed.items, io) as Json;
  }

  get components(): Json {
    return Object.fromEntries(this.#components);
  }
}
