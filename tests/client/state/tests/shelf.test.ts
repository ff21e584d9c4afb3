import { afterEach, describe, expect, it, vi } from "vitest";
import { fill, lackingOn } from "#client/state/tests/read.ts";
import { Shelf } from "#client/state/tests/shelf.ts";
import type { Book } from "#shared/book/book.ts";
import { fitsOf } from "#shared/book/bookFits.ts";
import { rotorKey } from "#shared/book/rotorBasis.ts";
import { testCounts } from "#shared/book/testCounts.ts";
import { EVERY_FIT, EVERY_TEST, type TestsAsked } from "#shared/book/testsAsked.ts";
import type { StoredOf } from "#shared/model/record.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const [first, second] = demoBook().tests;
const test = (id: string, date: string, revision = 1): StoredOf<"tests"> => ({
  ...first,
  id,
  revision,
  data: { ...first.data, date },
});
const idsOf = (shelf: Shelf) => shelf.tests.map(({ id }) => id);
const PULLS: TestsAsked = { kind: "pull" };

describe("the tests that a page has read", () => {
  it("stand in the order of the server's lists, however they came", () => {
    const shelf = new Shelf();
    shelf.put([test("b", "2026-01-02"), test("a", "2026-03-01")]);
    shelf.put([test("c", "2026-02-01"), test("d", "2026-02-01")]);
    expect(idsOf(shelf)).toEqual(["a", "d", "c", "b"]);
  });

  it("are one list until one of them changes", () => {
    const shelf = new Shelf();
    shelf.put([first, second]);
    const before = shelf.tests;
    expect(shelf.tests).toBe(before);
    shelf.keep(test("new", "2026-01-01"));
    expect(shelf.tests).not.toBe(before);
  });

  it("are as they were written last, where a page that was asked for earlier comes later", () => {
    const shelf = new Shelf();
    shelf.keep(test("a", "2026-01-02", 3));
    shelf.drop("b");
    shelf.put([test("a", "2026-01-01", 2), test("b", "2026-01-01")]);
    expect(shelf.tests.map(({ id, revision }) => [id, revision])).toEqual([["a", 3]]);
    shelf.keep(test("b", "2026-01-01", 2));
    expect(idsOf(shelf)).toEqual(["a", "b"]);
  });
});

describe("what a page still has to ask for", () => {
  it("is each question once, and none that was read whole", () => {
    const shelf = new Shelf();
    const ofRotor: TestsAsked = { kind: "curve", names: { rotor: "r" } };
    expect(lackingOn(shelf, [PULLS, ofRotor, PULLS])).toEqual([PULLS, ofRotor]);
    shelf.hold(PULLS);
    expect(lackingOn(shelf, [PULLS, ofRotor])).toEqual([ofRotor]);
    expect(lackingOn(shelf, [{ ...PULLS, newest: true }])).toEqual([{ ...PULLS, newest: true }]);
  });

  it("is everything alone where that is asked for, and nothing once it is here", () => {
    const shelf = new Shelf();
    expect(lackingOn(shelf, [PULLS, EVERY_TEST])).toEqual([EVERY_TEST]);
    shelf.hold(EVERY_TEST);
    expect(lackingOn(shelf, [PULLS, EVERY_TEST, { ...PULLS, newest: true }])).toEqual([]);
  });
});

describe("what all tests come to", () => {
  const demo = demoBook();
  const fits = fitsOf(demo);
  const [rotor] = Object.keys(fits.rotors);
  const ofRotor: readonly TestsAsked[] = [
    { kind: "curve", names: { rotor } },
    { kind: "thrust", names: { rotor } },
  ];
  const own = demo.tests.filter(({ data }) => data.kind === "curve" && data.rotor === rotor);
  const motors = new Set(own.flatMap(({ data }) => (data.kind === "curve" && data.motor) || []));

  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it("stands in the place of tests that aren't here, and no longer once all that a part rests on are", () => {
    const shelf = new Shelf();
    shelf.holdFits(fits);
    expect(shelf.known?.has(rotorKey(rotor))).toBe(true);
    for (const asked of ofRotor) shelf.hold(asked);
    shelf.put(own);
    // its power was told by the current of motors whose tests are still to come
    expect(motors.size).toBeGreaterThan(0);
    expect(shelf.known?.has(rotorKey(rotor))).toBe(true);
    for (const motor of motors) shelf.hold({ kind: "motor", names: { motor } });
    expect(shelf.known?.has(rotorKey(rotor))).toBe(false);
    const book = { ...demo, tests: shelf.tests, known: shelf.known ?? undefined };
    expect(testCounts(book, "surface", demo.surfaces[0].id)).toEqual(fits.tests.surface[demo.surfaces[0].id]);
  });

  it("is nothing to be known beside the whole book", () => {
    const shelf = new Shelf();
    shelf.holdFits(fits);
    shelf.hold(EVERY_TEST);
    expect(shelf.known).toBeNull();
    expect(lackingOn(shelf, [EVERY_FIT])).toEqual([]);
  });

  it.each(["rotors", "motors", "packs", "instruments", "plates", "tests"] as const)(
    "is asked for again once one of the %s was written, and not for a build",
    (name) => {
      const shelf = new Shelf();
      shelf.holdFits(fits);
      shelf.noteChange("builds");
      expect(lackingOn(shelf, [EVERY_FIT])).toEqual([]);
      if (name === "tests") shelf.keep(first);
      else shelf.noteChange(name);
      expect(shelf.known).toBeNull();
      expect(lackingOn(shelf, [EVERY_FIT])).toEqual([EVERY_FIT]);
    },
  );

  it("is read again where a test was written before the answer came", async () => {
    const shelf = new Shelf();
    let times = 0;
    vi.stubGlobal("sessionStorage", { getItem: () => null });
    vi.stubGlobal("fetch", () => {
      times++;
      if (times === 1) shelf.keep(first);
      return Promise.resolve(Response.json(fits));
    });
    const now = (): Book => ({ ...demo, tests: shelf.tests, known: shelf.known ?? undefined });
    await fill(shelf, now, () => [EVERY_FIT]);
    expect(times).toBe(2);
    expect(shelf.known?.size).toBeGreaterThan(0);
  });
});
