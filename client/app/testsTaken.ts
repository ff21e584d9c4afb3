import type { Book } from "../../shared/book/book.ts";
import { testsOfEveryPart } from "../../shared/book/bookFits.ts";
import { singleExchanges } from "../../shared/book/mass/exchange.ts";
import { EVERY_TEST, type TestsAsked } from "../../shared/book/testsAsked.ts";
import { type Rig, testsOfRigs } from "../../shared/book/testsOfRigs.ts";
import type { Build } from "../../shared/model/build.ts";
import { TEST_KINDS } from "../../shared/model/testKinds.ts";
import { offered } from "../../shared/model/withdrawn.ts";
import { changes, overlayIds, shownIn } from "../state/build.ts";
import { triedFromQuery, withTried } from "../state/partsTried.ts";
import { askedBuilds } from "../views/compare/asked.ts";
import { partKeyOf } from "../views/parts/list/uses.ts";
import { testsOfCurves } from "./curveTests.ts";
import { type Route, route } from "./router.ts";

const EVERY: readonly TestsAsked[] = [EVERY_TEST];

/** A new test is set up as the last one of its kind. */
const LAST_OF_EACH: readonly TestsAsked[] = TEST_KINDS.map((kind) => ({ kind, newest: true }));

function ofRigs(book: Book, rigs: readonly Rig[]): readonly TestsAsked[] {
  return testsOfRigs(
    rigs,
    book.tests.map(({ data }) => data),
  );
}

const buildsOf = (book: Book, ids: readonly string[]): Build[] =>
  book.builds.flatMap(({ id, data }) => (ids.includes(id) ? [data] : []));

/** The build of an address, with what it tries, and the builds laid over. */
function shownBuilds(book: Book, at: Route): Build[] {
  const build = shownIn(book, at)?.data;
  if (!build) return [];
  const { tried } = triedFromQuery(at.query, book);
  const over = (at.query.get("over") ?? "").split(",");
  return [build, withTried(book, build, tried), ...buildsOf(book, over)];
}

/** What is tried and laid over on the screen may not stand in the address yet. */
function triedNow(book: Book): Build[] {
  const build = shownIn(book, route.peek())?.data;
  return build ? [withTried(book, build, changes.peek()), ...buildsOf(book, overlayIds.peek())] : [];
}

/** A scale says of a ledger's lines what they weigh, by names that no part has as well. */
const WEIGH_INS: TestsAsked = { kind: "weigh-in" };

function ofMass(book: Book, at: Route): readonly TestsAsked[] {
  const builds = shownBuilds(book, at);
  const exchanged = builds.flatMap((build) =>
    singleExchanges(build).map((exchange) => ({ ...build, ...exchange })),
  );
  return [...ofRigs(book, [...builds, ...exchanged]), WEIGH_INS];
}

function ofComparison(book: Book, at: Route): readonly TestsAsked[] {
  const { ids } = askedBuilds(at.query, book, shownIn(book, at)?.id ?? null);
  return ofRigs(book, buildsOf(book, ids));
}

/** The other builds of the book stand on the map as well. */
function ofMap(book: Book, at: Route): readonly TestsAsked[] {
  const others = offered(book.builds, null).map(({ data }) => data);
  return ofRigs(book, [...shownBuilds(book, at), ...others]);
}

/** What a part's own page takes besides its tests: a rotor's curve those of its motors, a surface's roughness the leak tests on smoother ones. */
function besides(book: Book, key: string, part: string): readonly TestsAsked[] {
  return key === "rotor" || key === "surface" ? ofRigs(book, [{ [key]: part }]) : [];
}

/** The lists of all parts draw a curve of each, as all tests make it; a part's own page knows its tests. */
function ofParts(book: Book, { id }: Route): readonly TestsAsked[] {
  const [collection, part] = (id ?? "").split("/");
  if (!collection) return testsOfEveryPart(book);
  const key = partKeyOf(collection);
  if (!part || part === "new" || !key) return LAST_OF_EACH;
  return [...besides(book, key, part), { names: { [key]: part } }];
}

/**
 * The tests that a view takes.
 *
 *     a build: what its figures can rest on; Bench: the last of each kind, its lists come by pages and its forms ask for more; what goes over all parts: what their tests come to, Size and Choose all
 *
 * @param at - where the screen is, or is about to be
 * @param book - as far as it is read
 */
export function testsTaken(at: Route, book: Book): readonly TestsAsked[] {
  switch (at.view) {
    case "match":
    case "attitudes":
    case "run-down":
    case "fit-up":
    case "sheet":
      return ofRigs(book, shownBuilds(book, at));
    case "mass":
      return ofMass(book, at);
    case "map":
      return ofMap(book, at);
    case "compare":
      return ofComparison(book, at);
    case "bench":
    case "missing":
      return LAST_OF_EACH;
    case "parts":
      return ofParts(book, at);
    case "curves":
      return testsOfCurves(at.id, book);
    case "size":
    case "choose":
      return EVERY;
  }
}

/** @returns the tests that the screen takes as it is */
export const testsOnScreen = (book: Book): readonly TestsAsked[] => {
  const at = route.peek();
  const tried = at.view === "bench" ? [] : triedNow(book);
  return [...LAST_OF_EACH, ...testsTaken(at, book), ...ofRigs(book, tried)];
};
