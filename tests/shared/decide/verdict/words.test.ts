import { describe, expect, it } from "vitest";
import { told } from "#shared/decide/verdict/told.ts";
import { verdictOf } from "#shared/decide/verdict/verdict.ts";
import { detailOf, figureOf, sentenceOf, stateWords } from "#shared/decide/verdict/words.ts";
import { type Change, findings } from "./examples.ts";

const plain = (text: string) => text.replaceAll("\u202f", " ");
const sentence = (change: Change) => plain(sentenceOf(verdictOf(findings(change))));
const detail = (change: Change) => plain(detailOf(verdictOf(findings(change))));

describe("sentenceOf", () => {
  // 3000 rad/s are 28 648 rpm, shown rounded down to 28 600.
  it.each<[string, Change, string]>([
    [
      "bursts",
      { factor: 0.92 },
      "Bursts on the way up: the rotor reaches its strength at 26 300 rpm, 92 % of the 28 600 rpm it would reach at full charge.",
    ],
    [
      "burns",
      { winding: 477.15, windingLimit: 383.15, burnsAfter: 34.2 },
      "Burns: the winding settles at 204 °C at full charge, its limit is 110 °C. It passes that 34 s after a cold start.",
    ],
    [
      "burns, its limit not stated",
      { winding: 477.15, windingLimit: null, fromCharge: null },
      "Burns: the winding settles at 204 °C, common wire takes 155 °C, and the motor's own limit isn't known.",
    ],
    [
      "falls everywhere",
      { parked: 0.7 },
      "Falls: the pull is too small for the ceiling, the wall and the overhang at 128°.",
    ],
    [
      "falls somewhere",
      { parked: 0.8 },
      "Falls from the wall and the overhang at 128°; it holds the ceiling.",
    ],
    [
      "can't climb",
      { parked: 1.2, driving: 0.9 },
      "Can't climb the overhang at 128°; parked it holds everywhere it has to go.",
    ],
    ["stands", { turns: false, parked: 0 }, "Falls: the rotor comes to no steady speed, so nothing is held."],
    [
      "is over a rating",
      { ratings: { "motor-voltage": 1.06, "cell-current": 1.2 } },
      "Over a rating: a cell gives 12.0 A at full charge, its maker allows 10.0 A and the motor gets 8.48 V at full charge, its maker rates it at 8.00 V.",
    ],
    [
      "is over its safe speed",
      { factor: 1.8, fromCharge: 0.5 },
      "Over a rating: the rotor turns at 28 600 rpm at 50 % charge, 111 % of its safe speed.",
    ],
    [
      "is tight",
      { parked: 1.31 },
      "Holds everywhere it has to go, with less to spare on the overhang than the 1.5 × wanted.",
    ],
    ["is unsure", { chance: 0.89 }, "Not sure: the chance of holding on the overhang is 89 %, 95 % is sure."],
    [
      "is just unsure",
      { chance: 0.9496 },
      "Not sure: the chance of holding on the overhang is 94.96 %, 95.00 % is sure.",
    ],
    [
      "is contradicted",
      { contradictions: ["Pull 4."] },
      "Not sure: tests that this is based on contradict each other or the model.",
    ],
    ["holds", {}, "Holds everywhere it has to go; the overhang is the tightest."],
    ["needs no pull", { parked: null, driving: null }, "Holds everywhere it has to go without any pull."],
  ])("of a build that %s, says so with its figures", (_state, change, expected) => {
    expect(sentence(change)).toBe(expected);
  });

  it("of a build that bursts, burns or falls everywhere, says nowhere that it holds", () => {
    for (const change of [{ factor: 0.92, parked: 7.12 }, { winding: 477, parked: 7.12 }, { parked: 0.5 }])
      expect(sentence(change) + detail(change)).not.toMatch(/holds|tightest/i);
  });

  it("of a rotor just past its strength, never says 100 %", () => {
    expect(sentence({ factor: 0.9996 })).toContain("99.96 % of the");
  });
});

describe("detailOf", () => {
  it("of a build that holds, says what ends it first with the pulls, and what comes nearest to a limit", () => {
    // 10 N over 1.7 is 5.882 N, which weighs 600 g.
    expect(detail({ parked: 2, driving: 1.7, factor: 2.1 })).toBe(
      "The climb is hardest at 128°: 600 g of pull needed, 1020 g made. Nothing burns or bursts; nearest is the rotor, at 95 % of its safe speed at full charge.",
    );
  });

  it("of a build that burns, says no margin where the pull is enough, and that it is too small where it isn't", () => {
    expect(detail({ winding: 477, parked: 1.2 })).toBe("");
    expect(detail({ winding: 477, parked: 0.5 })).toMatch(
      /^The pull is too small as well\. Parked, it slips first, at 128°: 2039 g of pull needed, 1020 g made\./,
    );
  });

  it("of tests that contradict each other, names them first", () => {
    expect(detail({ contradictions: ["Pull 4 lies off."] })).toMatch(/^Pull 4 lies off\. /);
  });

  it("with limits that aren't known, names them last", () => {
    expect(detail({ factor: null })).toMatch(/Not judged, for want of data: the rotor's strength\.$/);
  });
});

describe("figureOf and stateWords", () => {
  it.each<[Change, string, string]>([
    [{ factor: 0.92 }, "92 %", "bursts"],
    [{ winding: 477.15 }, "204 °C", "burns"],
    [{ parked: 0.87 }, "0.87 ×", "falls"],
    [{ parked: 1.2, driving: 0.9 }, "0.90 ×", "can't climb"],
    [{ ratings: { "motor-voltage": 1.06 } }, "106 %", "over a rating"],
    [{ parked: 1.31 }, "1.31 ×", "tight"],
    [{ chance: 0.89 }, "89 %", "unsure"],
    [{}, "2.00 ×", "holds"],
  ])("of %o give %s and “%s”", (change, value, words) => {
    const verdict = verdictOf(findings(change));
    expect(plain(figureOf(verdict)?.value ?? "")).toBe(value);
    expect(stateWords(verdict)).toBe(words);
  });
});

describe("told", () => {
  it("leaves out angle and margin, with a rotor that bursts, and gives both where it lasts", () => {
    expect(Object.keys(told(verdictOf(findings({ factor: 0.9 }))))).toEqual(["state", "reason"]);
    expect(told(verdictOf(findings({ parked: 1.31 })))).toMatchObject({
      state: "tight",
      angle: 128,
      margin: 1.31,
    });
  });
});

describe("a verdict over a joint", () => {
  it("falls there although it holds beside it, and says how deep it is and how it is met", () => {
    const verdict = verdictOf(findings({ crossing: 0.9 }));
    expect(verdict.state).toBe("falls");
    expect(sentenceOf(verdict)).toBe(
      "Falls from the overhang over the glazing bar (0.80\u202fmm deep, with a side of the lip along it); beside it, it holds everywhere it has to go.",
    );
    expect(figureOf(verdict)).toEqual({
      value: "0.90\u202f×",
      of: "the pull needed on the overhang over the glazing bar",
    });
  });

  it("is tight there, or holds with the joint as the tightest place", () => {
    expect(sentenceOf(verdictOf(findings({ crossing: 1.2 })))).toContain(
      "less to spare on the overhang over the glazing bar than the 1.5",
    );
    expect(sentenceOf(verdictOf(findings({ crossing: 1.7 })))).toContain(
      "the overhang over the glazing bar is the tightest",
    );
  });

  it("without a joint that is harder than the surface beside it is today's", () => {
    const [plain, easy] = [findings(), findings({ crossing: 2.5 })].map((each) => verdictOf(each));
    expect(easy).toEqual(plain);
  });
});
