import type { Book } from "../../../shared/book/resolve.ts";
import { countOf, testCounts } from "../../../shared/book/testCounts.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { TestKind } from "../../../shared/model/tests/index.ts";

/** The parts that this view draws curves of, and the kinds of tests that bear on each. */
export const CURVE_PARTS = {
  rotors: { title: "Rotors", one: "rotor", key: "rotor", kinds: ["curve", "thrust"] },
  motors: { title: "Motors", one: "motor", key: "motor", kinds: ["motor"] },
  packs: { title: "Packs", one: "pack", key: "pack", kinds: ["discharge"] },
  skirts: { title: "Skirts", one: "skirt", key: "skirt", kinds: ["leak", "pull"] },
  surfaces: { title: "Surfaces", one: "surface", key: "surface", kinds: ["friction", "leak", "pull"] },
  gears: { title: "Running gear", one: "running gear", key: "gear", kinds: ["ride-height"] },
} as const satisfies Record<string, { title: string; one: string; key: string; kinds: readonly TestKind[] }>;

export type CurveCollection = keyof typeof CURVE_PARTS;
export const CURVE_COLLECTIONS = Object.keys(CURVE_PARTS) as readonly CurveCollection[];

/** What follows /curves in the address of the track record. */
export const RECORD = "record";

export interface Place {
  readonly collection: CurveCollection;
  readonly id: string | null;
}

/** @returns what follows /curves in the address, "rotors/b8" → rotors and b8; null where it names no collection */
export function placeOf(id: string | null): Place | null {
  const [name, part] = (id ?? "").split("/");
  const collection = CURVE_COLLECTIONS.find((each) => each === name);
  return collection ? { collection, id: part || null } : null;
}

/** @returns the tests that bear on a part, in the order of their days */
export function testsOfPart(book: Book, collection: CurveCollection, id: string): StoredOf<"tests">[] {
  const { key, kinds } = CURVE_PARTS[collection];
  return book.tests
    .filter((test) => (kinds as readonly TestKind[]).includes(test.data.kind))
    .filter((test) => (test.data as unknown as Record<string, unknown>)[key] === id)
    .sort((a, b) => a.data.date.localeCompare(b.data.date) || a.createdAt.localeCompare(b.createdAt));
}

/** @returns how many tests bear on a part */
export function testCountOf(book: Book, collection: CurveCollection, id: string): number {
  const { key, kinds } = CURVE_PARTS[collection];
  return countOf(testCounts(book, key, id), kinds);
}

/** @returns the part that is shown first: the one the address names, else the first with tests, else the first */
export function placeToShow(book: Book, asked: Place | null): Place | null {
  if (asked?.id && book[asked.collection].some((part) => part.id === asked.id)) return asked;
  if (asked?.id) return null;
  const collections = asked ? [asked.collection] : CURVE_COLLECTIONS;
  const places = collections.flatMap((collection) => book[collection].map(({ id }) => ({ collection, id })));
  return places.find((each) => testCountOf(book, each.collection, each.id) > 0) ?? places[0] ?? null;
}
