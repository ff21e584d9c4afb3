import fc from "fast-check";

/** Values that somebody could send to see what happens. */
const HOSTILE: readonly unknown[] = [
  null,
  true,
  [],
  {},
  "",
  0,
  -0,
  -1,
  1e308,
  -1e308,
  5e-324,
  2 ** 53,
  0.1,
  "NaN",
  "1e3",
  "=1+2",
  "../../etc/passwd",
  "'; DROP TABLE records; --",
  "\u0000",
  "\ud800",
  "x".repeat(5000),
  { __proto__: null, constructor: { prototype: { polluted: 1 } } },
  [[[[[[[[]]]]]]]],
  { value: 12, unit: "furlong" },
  { value: 1e308, unit: "kPa" },
];

const hostileValue = fc.constantFrom(...HOSTILE);

type Change = { readonly at: number; readonly value: unknown; readonly how: "put" | "drop" | "add" };

const isHolder = (value: unknown): value is Record<string, unknown> | unknown[] =>
  typeof value === "object" && value !== null;

/** @returns every place in a value: what holds it, and under which key */
function placesIn(value: unknown): { holder: object; key: string }[] {
  if (!isHolder(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => [{ holder: value, key }, ...placesIn(inner)]);
}

function changed(value: unknown, { at, value: put, how }: Change): unknown {
  const copy: unknown = structuredClone(value);
  const places = placesIn(copy);
  if (places.length === 0) return put;
  const { holder, key } = places[at % places.length];
  if (how === "drop") Reflect.deleteProperty(holder, key);
  else Reflect.set(holder, how === "add" ? `${key}2` : key, put);
  return copy;
}

/** @returns values that are right but in one place */
export function nearly(valid: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const change = fc.record({
    at: fc.nat(),
    value: hostileValue,
    how: fc.constantFrom("put", "put", "put", "drop", "add"),
  }) as fc.Arbitrary<Change>;
  return fc.tuple(valid, change).map(([value, made]) => changed(value, made));
}

/** Bodies that are no JSON, or not the JSON that anybody asked for. */
export const hostileText: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(
    "",
    "{",
    "nul",
    '{"a":1,}',
    '{"kv": NaN}',
    '{"kv": 1e999}',
    '{"__proto__": {"polluted": 1}}',
    "[".repeat(2000),
    `${'{"a":'.repeat(40)}1${"}".repeat(40)}`,
    `"${"\\u0000".repeat(50)}"`,
    `[${"0,".repeat(3000)}0]`,
  ),
  fc.json({ maxDepth: 3 }),
  hostileValue.map((value) => JSON.stringify(value)),
);

/** Parts of an address, and queries. */
export const hostileWord: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom("none", "%00", "%zz", "..", "a b", "é", "-1", "1e9", "__proto__", "x".repeat(300)),
  fc.string({ maxLength: 12 }),
);
