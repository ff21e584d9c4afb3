import { describe, expect, it } from "vitest";
import { lackingOn } from "#client/state/tests/read.ts";
import { Shelf } from "#client/state/tests/shelf.ts";
import { EVERY_TEST, type TestsAsked } from "#shared/book/testsAsked.ts";
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
