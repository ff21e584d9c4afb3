import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adjustmentOf } from "#client/views/bench/import/adjust.ts";
import { elapsed, readClock } from "#client/views/bench/import/clock.ts";
import { conditionTest } from "#client/views/bench/import/select.ts";
import { Thinned } from "#client/views/bench/import/thinning.ts";

const seconds = (text: string) => readClock(text)?.seconds ?? null;

describe("readClock", () => {
  it.each([
    ["0:01:23", 83],
    ["01:23.5", 83.5],
    ["1:00:00,25", 3600.25],
    ["123:00", 7380],
    // Unix time of the Unix epoch and of a day later (POSIX.1-2017, 4.16)
    ["1970-01-01T00:00:00Z", 0],
    ["1970-01-02 00:00", 86400],
    ["1970-01-01T01:00:00+01:00", 0],
    ["02.01.1970 00:00:01", 86401],
  ])("reads %j", (text, expected) => {
    expect(seconds(text)).toBe(expected);
  });

  it.each(["12", "1:75:00", "0:00:61", "2026-02-30 12:00", "03/04/2026 12:00:00", "12:xx"])(
    "takes %j for no time",
    (text) => {
      expect(readClock(text)).toBeNull();
    },
  );

  it("goes on over midnight where no date is given", () => {
    const [late, early] = ["23:59:30", "0:00:30"].map(
      (text) => readClock(text) ?? { seconds: 0, dated: true },
    );
    expect(elapsed(late, early)).toBe(60);
  });
});

describe("conditionTest", () => {
  it.each([
    ["21818", "21818.0", true],
    ["21818", "24000", false],
    ["a", " A ", true],
    ["10 to 20", "20", true],
    ["10..20", "20.1", false],
    ["-5 to 5", "-5", true],
    ["> 10.4", "10.4", false],
    [">= 10.4", "10.4", true],
    ["< 0", "-1e-3", true],
    ["> 3", "fast", false],
    ["not empty", " ", false],
    ["not empty", "0", true],
  ])("%j of %j is %s", (asked, cell, holds) => {
    expect(conditionTest(asked, ".")?.(cell)).toBe(holds);
  });

  it("reads a file's decimal commas, typed with a point or with a comma", () => {
    expect(conditionTest("> 10.4", ",")?.("10,5")).toBe(true);
    expect(conditionTest("10,5", ",")?.("10,50")).toBe(true);
  });

  it("asks nothing where nothing is typed", () => {
    expect(conditionTest("  ", ".")).toBeNull();
  });
});

describe("adjustmentOf", () => {
  const read = (times: string, minus: string) => adjustmentOf({ role: "speed", unit: "rpm", times, minus });
  it.each([
    ["", "", { times: 1, minus: 0 }],
    ["-1", "0.12", { times: -1, minus: 0.12 }],
    ["1/7", "first", { times: 1 / 7, minus: "first" }],
    ["/ 7", "", { times: 1 / 7, minus: 0 }],
    ["× 0.25", "-3", { times: 0.25, minus: -3 }],
    ["", "12:00:03", { times: 1, minus: { seconds: 43203, dated: false } }],
  ])("reads %j and %j", (times, minus, expected) => {
    expect(read(times, minus)).toEqual(expected);
  });

  it.each([
    ["0", ""],
    ["seven", ""],
    ["", "a bit"],
  ])("refuses %j and %j with what is allowed", (times, minus) => {
    expect(read(times, minus)).toMatchObject({ problem: expect.stringMatching(/allowed/) });
  });
});

describe("Thinned", () => {
  it("keeps exactly every n-th, n a doubling of what was asked, and never more than it may", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 3000 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 5 }),
        (count, most, first) => {
          const thinned = new Thinned<number>(most, first);
          for (let i = 0; i < count; i++) thinned.add(() => i);
          const { kept, of, every } = thinned.done();
          expect(of).toBe(count);
          expect(Math.log2(every / first) % 1).toBe(0);
          expect(kept).toEqual(Array.from({ length: Math.ceil(count / every) }, (_, i) => i * every));
          expect(kept.length).toBeLessThanOrEqual(most);
          // one doubling less would have been too many
          if (every > first) expect(Math.ceil(count / (every / 2))).toBeGreaterThan(most);
        },
      ),
    );
  });
});
