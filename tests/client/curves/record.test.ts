import { describe, expect, it } from "vitest";
import { recordPlot } from "#client/views/curves/record/recordPlot.ts";
import {
  basisSentence,
  isAsWide,
  measuredText,
  offSentences,
  predictedText,
  recordSentence,
} from "#client/views/curves/record/recordWords.ts";
import type { RecordEntry, RecordSummary, TrackRecord } from "#shared/model/api/record.ts";

const LINE: RecordSummary = {
  figure: "pull",
  count: 20,
  inTime: 12,
  inside: 0.9,
  bias: 0.031,
  drift: -0.02,
  said: null,
  held: null,
};
const recordWith = (...summary: RecordSummary[]): TrackRecord => ({
  entries: [],
  summary,
  missing: 0,
  owed: 0,
});

const pull: RecordEntry = {
  test: "t",
  row: 0,
  kind: "pull",
  date: "2026-01-01",
  at: "2026-01-01T08:00:00.000Z",
  figure: "pull",
  basis: "then",
  p5: 7.84532,
  p50: 9.80665,
  p95: 11.76798,
  chance: null,
  measured: { low: 9.80665, high: 10.787315 },
  held: null,
  inside: true,
};

describe("the record, in words", () => {
  it("of nothing: says what fills it", () => {
    expect(recordSentence(recordWith())).toContain("log a pull");
    expect(basisSentence(recordWith())).toBeNull();
  });

  it("of enough readings: how many lie inside, and whether that is right", () => {
    expect(recordSentence(recordWith(LINE))).toBe(
      "18 of 20 readings within the predicted band, about the nine of ten that are right.",
    );
    expect(recordSentence(recordWith({ ...LINE, inside: 0.5 }))).toContain("less certain than stated");
    expect(recordSentence(recordWith({ ...LINE, count: 4, inside: 1 }))).toContain("too few to judge by");
  });

  it("says how far off, and whether it drifts; nothing that rounds to nothing", () => {
    expect(offSentences(recordWith(LINE))).toEqual([
      "Pulls came out 3.1\u202f% high in the median, the later half 2.0\u202f% lower than the earlier.",
    ]);
    expect(offSentences(recordWith({ ...LINE, bias: 1e-4, drift: null }))).toEqual([
      "Pulls came out as predicted in the median.",
    ]);
  });

  it("of drives: what held against what was expected to", () => {
    const drives = {
      ...LINE,
      figure: "margin",
      count: 5,
      inside: null,
      bias: null,
      said: 0.7,
      held: 0.8,
    } as const;
    expect(recordSentence(recordWith(drives))).toBe("4 of 5 attitudes driven held; 3.5 were expected to.");
  });

  it("says what was predicted afterwards, and how", () => {
    expect(basisSentence(recordWith({ ...LINE, inTime: 20 }))).toBe(
      "All were predicted as they were logged.",
    );
    expect(basisSentence(recordWith(LINE))).toMatch(
      /^12 were predicted as they were logged; 8 were predicted afterwards/,
    );
  });
});

describe("whether a band of 90 % is as wide as it says", () => {
  // Binomial, normal approximation: 90 ± 5.9 of a hundred.
  it.each([
    [90, 100, "as wide"],
    [85, 100, "as wide"],
    [83, 100, "too narrow"],
    [97, 100, "too wide"],
    [10, 10, "as wide"],
  ] as const)("%s of %s: %s", (inside, count, expected) => {
    expect(isAsWide(inside, count)).toBe(expected);
  });
});

describe("a reading of the record", () => {
  it("in words: grams, brackets and bands", () => {
    expect(measuredText(pull)).toBe("1000\u202fg to 1100\u202fg");
    expect(measuredText({ ...pull, measured: { low: 9.80665, high: null } })).toBe("1000\u202fg and more");
    expect(predictedText(pull)).toBe("1000\u202fg, 800\u202fg to 1200\u202fg");
    const drive = {
      ...pull,
      figure: "margin",
      p5: null,
      p50: null,
      p95: null,
      chance: 0.98,
      held: true,
    } as const;
    expect(predictedText(drive)).toBe("no suction needed; chance of holding 98\u202f%");
    expect(measuredText({ ...drive, measured: null })).toBe("held");
  });

  it("on the chart: in per cent of what was predicted; a drive has no place there", () => {
    const leak: RecordEntry = { ...pull, figure: "leak", measured: { low: 9.80665, high: 9.80665 }, row: 1 };
    const drive: RecordEntry = { ...pull, figure: "margin", measured: null, held: true, row: 2 };
    const { brackets, marks, spreads } = recordPlot([pull, leak, drive]);
    expect(brackets?.map(({ at, lo, hi }) => [at, lo, hi && Math.round(hi)])).toEqual([[1, 100, 110]]);
    expect(marks?.map(({ x, y }) => [x, y])).toEqual([[2, 100]]);
    expect(spreads?.map(({ y }) => y?.map(Math.round))).toEqual([
      [80, 120],
      [80, 120],
    ]);
  });
});
