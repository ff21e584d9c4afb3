import type { Book } from "../../shared/book/book.ts";
import { EVERY_FIT, EVERY_TEST, type TestsAsked } from "../../shared/book/testsAsked.ts";
import { type Rig, testsOfRigs } from "../../shared/book/testsOfRigs.ts";
import {
  CURVE_PARTS,
  type Place,
  placeOf,
  placeToShow,
  RECORD,
  testsOfPart,
} from "../views/curves/address.ts";

/** What a part was tested with, each rig once: a pull is held against what its rig should make, a leak against its surface. */
function rigsOf(book: Book, { collection, id }: Place): Rig[] {
  const found = new Map<string, Rig>();
  for (const { data } of testsOfPart(book, collection, id ?? "")) {
    const { rotor, motor, pack, skirt, surface } = data as unknown as Rig;
    const rig = { rotor, motor, pack, skirt, surface };
    found.set(JSON.stringify(rig), rig);
  }
  return [...found.values()];
}

/**
 * The tests that the page of a part in Curves takes, and how many every part of the list has.
 *
 * @param id - what follows /curves in the address; without a part, the first that has tests
 * @param book - as far as it is read
 */
export function testsOfCurves(id: string | null, book: Book): readonly TestsAsked[] {
  // The track record names the tests of all builds.
  if (id === RECORD) return [EVERY_TEST];
  if (!book.known) return [EVERY_FIT];
  const place = placeToShow(book, placeOf(id));
  if (!place?.id) return [EVERY_FIT];
  const { key, kinds } = CURVE_PARTS[place.collection];
  const own = kinds.map((kind): TestsAsked => ({ kind, names: { [key]: place.id } }));
  const tests = book.tests.map(({ data }) => data);
  return [EVERY_FIT, ...own, ...testsOfRigs(rigsOf(book, place), tests)];
}
