import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { toCsv } from "#client/ui/table.ts";
import { pictureOf } from "#client/views/match/picture.ts";
import { pictureTable } from "#client/views/match/table.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const outcome = solve(book, book.builds[0].data);
const picture = pictureOf(book, outcome) ?? expect.fail("the demo's first build has no picture");
const point = outcome.prediction?.point ?? expect.fail("it has no operating point");

/** Samples that lie so far about the operating point, as a share of it. */
const about = (value: number | null, share: number) => {
  const at = value ?? Number.NaN;
  return { p5: at * (1 - share), p50: at, p95: at * (1 + share) };
};
const lineOf = (what: string, spread: Parameters<typeof pictureTable>[1]) =>
  toCsv(pictureTable(picture, spread))
    .split("\r\n")
    .find((line) => line.startsWith(what))
    ?.split(",");

describe("Match as a table", () => {
  it("with samples: the operating point has the digits that they leave, its pull as well", () => {
    const spread = { flow: about(point.flow, 0.1), pressure: about(point.pressure, 0.2) };
    const [, flow, suction, pull] = lineOf("operating point,", spread) ?? [];
    // ± 6 % and ± 12 %: two digits of the uncertainty are hundredths of a litre, tens of pascals and grams.
    expect(flow).toMatch(/^\d\.\d{1,2}$/);
    expect(suction).toMatch(/^\d{3}0$/);
    expect(pull).toMatch(/^\d{3}0$/);
  });

  it("without them: every digit that a file has, since none is known to be too many", () => {
    const [, flow, suction] = lineOf("operating point,", null) ?? [];
    expect(Number(flow)).toBeCloseToRelative((point.flow ?? Number.NaN) * 1000, 1e-5);
    expect(Number(suction)).toBeCloseToRelative(point.pressure ?? Number.NaN, 1e-5);
  });
});
