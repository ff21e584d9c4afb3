import { describe, expect, it } from "vitest";
import { weighedLines, withWeighed } from "#shared/book/mass/weighedLines.ts";
import { benchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const crawler = demo.builds[0].data;
const weighIn = (id: string, more: object, grams: number) => ({
  id,
  revision: 1,
  createdAt: "2026-06-01T00:00:00.000Z",
  updatedAt: "2026-06-01T00:00:00.000Z",
  data: benchTest.parse({
    kind: "weigh-in",
    title: id,
    date: "2026-06-01",
    weighed: "part",
    rows: [{ reading: { value: grams, unit: "g" } }, { reading: { value: grams, unit: "g" } }],
    ...more,
  }),
});
const bookWith = (...tests: ReturnType<typeof weighIn>[]) => ({
  ...demo,
  tests: [...demo.tests.filter(({ data }) => data.kind !== "weigh-in"), ...tests],
});

describe("weigh-ins beside the lines of a build", () => {
  it("name the part that weighed something else, and the line by its own name, whatever its letters", () => {
    const book = bookWith(weighIn("a", { motor: "bell-18" }, 20.5), weighIn("b", { what: "receiver" }, 7.2));
    const found = weighedLines(book, crawler);
    expect(found.map(({ line }) => line.name)).toEqual(["Bell motor, 18 mm", "Receiver"]);
    expect(found[0].mass).toBeCloseToRelative(0.0205, 1e-9);
  });

  it("take the newest, none that is struck out, none of another motor, none of several parts", () => {
    const book = bookWith(
      weighIn("old", { what: "Receiver", date: "2026-05-01" }, 9),
      weighIn("new", { what: "Receiver", date: "2026-05-20" }, 7),
      weighIn("struck", { what: "Receiver", date: "2026-05-30", struckOut: "the scale slipped" }, 5),
      weighIn("other", { motor: "bell-22" }, 33),
    );
    const found = weighedLines(book, crawler);
    expect(found.map(({ date }) => date)).toEqual(["2026-05-20"]);
  });

  it("taken over, make the line a weighed one, and are then silent", () => {
    const book = bookWith(weighIn("b", { what: "Receiver" }, 7.2));
    const [weighed] = weighedLines(book, crawler);
    const after = withWeighed(crawler, weighed);
    expect(after.ledger.find(({ name }) => name === "Receiver")).toMatchObject({ basis: "weighed" });
    expect(weighedLines(book, after)).toEqual([]);
    expect(after.ledger.filter(({ name }) => name !== "Receiver")).toEqual(
      crawler.ledger.filter(({ name }) => name !== "Receiver"),
    );
  });
});
