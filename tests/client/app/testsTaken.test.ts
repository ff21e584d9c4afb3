import { afterEach, describe, expect, it, vi } from "vitest";
import { parseRoute, type Route } from "#client/app/router.ts";
import { testsTaken } from "#client/app/testsTaken.ts";
import { solve } from "#client/state/outcome.ts";
import { fill } from "#client/state/tests/read.ts";
import { Shelf } from "#client/state/tests/shelf.ts";
import { CURVE_COLLECTIONS, placeToShow, testCountOf, testsOfPart } from "#client/views/curves/address.ts";
import { calibrationPage, pairsWith } from "#client/views/curves/calibration/calibrationData.ts";
import { frictionGroups } from "#client/views/curves/friction/frictionData.ts";
import { gearPage } from "#client/views/curves/gear/gearData.ts";
import { leakPage } from "#client/views/curves/leak/leakData.ts";
import { motorPage } from "#client/views/curves/motor/motorData.ts";
import { packPage } from "#client/views/curves/pack/packData.ts";
import { propellerPage } from "#client/views/curves/propeller/propellerData.ts";
import { pullPage } from "#client/views/curves/pull/pullData.ts";
import { rotorFamily } from "#client/views/curves/rotor/family.ts";
import { othersOn } from "#client/views/map/others.ts";
import { standsOf } from "#client/views/map/question.ts";
import { swapQuestion } from "#client/views/mass/swaps/question.ts";
import { figuresOf } from "#client/views/parts/list/figures.ts";
import { countedUses, usesOf } from "#client/views/parts/list/uses.ts";
import type { Book } from "#shared/book/book.ts";
import { fitsOf } from "#shared/book/bookFits.ts";
import { bookOfBuild } from "#shared/book/bookOfBuild.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { testsLeftOut } from "#shared/book/leftOut/leftOut.ts";
import { weighedLines } from "#shared/book/mass/weighedLines.ts";
import type { StoredOf } from "#shared/model/record.ts";
import { crowdedBook } from "#tests/support/crowdedBook.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const CROWD = { groups: 3, tests: 900 };
const whole = crowdedBook(demo, CROWD);

const PAGE = 50;

const asked: string[] = [];
/** As it travels. */
const fits = JSON.stringify(fitsOf(whole));

/** What the server answers: all tests together, or its list, filtered by kind and by each part that a test names, page by page. */
function listed(path: string): Response {
  asked.push(path);
  if (path.endsWith("/fits")) return Response.json(JSON.parse(fits));
  const {
    limit,
    cursor,
    struckOut: _,
    kind,
    ...names
  } = Object.fromEntries(new URL(path, "http://x").searchParams);
  const found = whole.tests.filter(({ data }) => {
    const said = data as unknown as Readonly<Record<string, unknown>>;
    return (!kind || data.kind === kind) && Object.entries(names).every(([key, id]) => said[key] === id);
  });
  const from = Number(cursor ?? 0);
  const to = from + Math.min(PAGE, Number(limit));
  return Response.json({ items: found.slice(from, to), next: to < found.length ? String(to) : null });
}

/** The book as a page holds it that shows an address and has read nothing else. */
async function bookAt(at: Route, parts: Book = whole): Promise<Book> {
  vi.stubGlobal("sessionStorage", { getItem: () => null });
  vi.stubGlobal("fetch", (path: string) => Promise.resolve(listed(path)));
  const shelf = new Shelf();
  const now = (): Book => ({ ...parts, tests: shelf.tests, known: shelf.known ?? undefined });
  await fill(shelf, now, (book) => testsTaken(at, book));
  return now();
}

afterEach(() => {
  vi.unstubAllGlobals();
});

const inOrder = (book: Book): Book => {
  const shelf = new Shelf();
  shelf.put(book.tests);
  return { ...book, tests: shelf.tests };
};
const all = inOrder(whole);
const builds = demo.builds.map(({ id, data }) => [id, data] as const);

function buildOf(wanted: string) {
  const found = builds.find(([id]) => id === wanted);
  if (!found) throw new Error(`The demo has no ${wanted}.`);
  return found[1];
}

const idsOf = ({ tests }: Book) => tests.map(({ id }) => id);

describe("the tests that a view of one build takes, in a book with many others", () => {
  it.each(builds)(
    "of %s: few, and its figures, uncertainties and tests left out are those of the whole book",
    async (id, build) => {
      const part = await bookAt(parseRoute(`/match/${id}`));
      expect(part.tests.length).toBeLessThan(demo.tests.length);
      const [own, other] = [solve(part, build), solve(all, build)];
      expect(own).toEqual(other);
      if (own.resolved && other.resolved)
        expect(buildUncertainty(part, build, own.resolved)).toEqual(
          buildUncertainty(all, build, other.resolved),
        );
      expect(testsLeftOut(part, build)).toEqual(testsLeftOut(all, build));
    },
  );

  it("hold what the rigs rest on that calibrate its skirt, though it has another rotor, motor and pack", async () => {
    const { rotor, diameter, motor, pack } = buildOf("ridge-runner");
    const mixed = { ...buildOf("pane-crawler"), rotor, diameter, motor, pack };
    const stored = { ...demo.builds[0], id: "mixed", data: mixed };
    const parts = { ...whole, builds: [...whole.builds, stored] };
    const part = await bookAt(parseRoute("/match/mixed"), parts);
    const [own, other] = [solve(part, mixed), solve({ ...all, builds: parts.builds }, mixed)];
    expect(own.resolved?.gap.basis).toBe("calibrated");
    expect(own).toEqual(other);
  });

  it("with a part tried and a build laid over: theirs as well", async () => {
    const at = parseRoute("/match/pane-crawler", "?motor=g1-bell-18&over=ridge-runner");
    const tried = { ...buildOf("pane-crawler"), motor: "g1-bell-18" };
    const over = buildOf("ridge-runner");
    const part = await bookAt(at);
    for (const build of [tried, over]) expect(solve(part, build)).toEqual(solve(all, build));
  });
});

describe("the tests that the masses of a build take", () => {
  it.each(builds)(
    "of %s: its weighed lines and its exchanges are those of the whole book",
    async (id, build) => {
      const part = await bookAt(parseRoute(`/mass/${id}`));
      expect(weighedLines(part, build)).toEqual(weighedLines(all, build));
      const [own, other] = [part, all].map((book) => swapQuestion(book, build, "price"));
      expect(own && solve(own.book, build)).toEqual(other && solve(other.book, build));
      const without = (question: typeof own) => question && idsOf(question.book);
      expect(without(own)?.length).toBe(without(other)?.length);
    },
  );
});

describe("the tests that a comparison and a map take", () => {
  it("are those of the builds side by side", async () => {
    const part = await bookAt(parseRoute("/compare", `?builds=${builds.map(([id]) => id).join(",")}`));
    for (const [, build] of builds) expect(solve(part, build)).toEqual(solve(all, build));
    expect(part.tests.length).toBeLessThanOrEqual(demo.tests.length);
  });

  it("hold every other build that stands on the map", async () => {
    const [[id, build]] = builds;
    const part = await bookAt(parseRoute(`/map/${id}`));
    const others = (book: Book) => {
      const stands = standsOf(solve(book, build));
      if (!stands) throw new Error("The demo's first build has no point.");
      const axes = { x: { key: "diameter" }, y: { key: "gap" } } as Parameters<typeof othersOn>[3];
      return othersOn(book, id, stands, axes);
    };
    expect(others(part).length).toBeGreaterThan(0);
    expect(others(part)).toEqual(others(all));
  });
});

describe("the tests that a part's page takes", () => {
  it.each(["rotors/swept-nine", "motors/bell-18", "packs", "skirts", "surfaces/roof-pane", "gears"])(
    "of %s: what is known of it is that of the whole book",
    async (named) => {
      const [name, one] = named.split("/");
      const collection = name as "rotors";
      const id = one ?? demo[collection][0].id;
      const part = await bookAt(parseRoute(`/parts/${collection}/${id}`));
      expect(figuresOf(part, collection, id)).toEqual(figuresOf(all, collection, id));
      expect(usesOf(part, collection, id)).toEqual(usesOf(all, collection, id));
      expect(part.tests.length).toBeLessThan(demo.tests.length);
    },
  );

  it("are none where a part is added", async () => {
    const { tests } = await bookAt(parseRoute("/parts/rotors/new"));
    expect(tests.length).toBe(new Set(whole.tests.map(({ data }) => data.kind)).size);
  });
});

const PARTS = ["rotors", "motors", "packs", "skirts", "surfaces", "gears"] as const;

describe("what the lists of all parts take", () => {
  it("is one answer, and no test: figures, curves and counts of each part are those of the whole book", async () => {
    asked.length = 0;
    const part = await bookAt(parseRoute("/parts"));
    expect(part.tests).toEqual([]);
    expect(asked).toEqual(["/api/v1/fits"]);
    for (const collection of [...PARTS, "builds"] as const)
      for (const { id } of whole[collection]) {
        expect(figuresOf(part, collection, id)).toEqual(figuresOf(all, collection, id));
        const uses = usesOf(all, collection, id);
        expect(countedUses(part, collection, id)).toEqual(
          uses && { tests: uses.tests.length, builds: uses.builds.length },
        );
      }
  });
});

/** Everything that a part's page in Curves is drawn from. */
function pageOf(book: Book, collection: (typeof CURVE_COLLECTIONS)[number], id: string) {
  if (collection === "rotors") return { ducted: rotorFamily(book, id), open: propellerPage(book, id) };
  if (collection === "motors") return motorPage(book, id);
  if (collection === "packs") return packPage(book, id);
  if (collection === "gears") return gearPage(book, id);
  const part = collection === "skirts" ? "skirt" : "surface";
  return {
    leak: leakPage(book, part, id),
    pull: pullPage(book, part, id),
    friction: part === "surface" && frictionGroups(book, id),
    pairs: pairsWith(book, part, id).map((pair) => calibrationPage(book, pair)),
  };
}

describe("the tests that a part's page in Curves takes", () => {
  const places = CURVE_COLLECTIONS.flatMap((collection) =>
    demo[collection].map(({ id }) => [collection, id] as const),
  );

  it.each(places)("of %s/%s: its figures are those of the whole book", async (collection, id) => {
    const part = await bookAt(parseRoute(`/curves/${collection}/${id}`));
    expect(pageOf(part, collection, id)).toEqual(pageOf(all, collection, id));
    expect(testsOfPart(part, collection, id)).toEqual(testsOfPart(all, collection, id));
    expect(part.tests.length).toBeLessThan(demo.tests.length);
  });

  it("without a part are those of the first with tests, and every part of the list has its count", async () => {
    const part = await bookAt(parseRoute("/curves"));
    const first = placeToShow(all, null);
    expect(placeToShow(part, null)).toEqual(first);
    expect(part.tests.length).toBeLessThan(demo.tests.length);
    expect(first && pageOf(part, first.collection, first.id ?? "")).toEqual(
      first && pageOf(all, first.collection, first.id ?? ""),
    );
    for (const collection of CURVE_COLLECTIONS)
      for (const { id } of whole[collection])
        expect(testCountOf(part, collection, id)).toBe(testsOfPart(all, collection, id).length);
  });
});

describe("what the Bench takes", () => {
  it("is the last test of each kind, one request each", async () => {
    const part = await bookAt(parseRoute("/bench"));
    const kinds = new Set(whole.tests.map(({ data }) => data.kind)).size;
    expect(part.tests.length).toBe(kinds);
  });
});

describe("the part of a book that is handed to another thread", () => {
  it("is the same, made of what a page holds or of the whole book", async () => {
    const [[id, build]] = builds;
    const held = (await bookAt(parseRoute(`/match/${id}`))).tests as StoredOf<"tests">[];
    const part = { ...all, tests: held };
    expect(idsOf(bookOfBuild(part, build)).filter((test) => !test.startsWith("other"))).toEqual(
      idsOf(bookOfBuild(all, build)).filter((test) => !test.startsWith("other")),
    );
  });
});
