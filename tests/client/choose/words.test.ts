import { describe, expect, it } from "vitest";
import { draftOf } from "#client/views/choose/form/draft.ts";
import { reliefOf, reliefOfCombination } from "#client/views/choose/relax.ts";
import { shownFrom, shownQuery, withPin } from "#client/views/choose/state/shown.ts";
import { restText, sizedRotorText, trustMarks, trustText } from "#client/views/choose/words/combination.ts";
import { brokenText, inOrOut, wantedNames } from "#client/views/choose/words/limits.ts";
import { answerSentence, previewText, progressText } from "#client/views/choose/words/searchSentences.ts";
import { enoughText, placeText, tiesText } from "#client/views/choose/words/ties.ts";
import { LIMITS } from "#shared/decide/choose/result.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { exampleCombination } from "./examples.ts";

const book = demoBook();
const base = book.builds.find(({ id }) => id === "pane-crawler")?.data ?? null;
const wall = chooseBody({ wants: { attitudes: [{ angle: 90, mode: "driving" }] } }).wants;
const plain = (text: string) => text.replace(/\u202f/g, " ");

const item = (
  place: number,
  margin5: number | null = 2,
  enough = true,
  state: "holds" | "burns" | "over-rating" | "falls" = "holds",
) => ({
  place,
  verdict: { state, reason: "" },
  chance: 0.97,
  margin5,
  deviation: 0.1,
  enough,
  set: exampleCombination(),
});

describe("answerSentence", () => {
  const job = { sets: 19_656, admissible: 1528 };
  it("tells how many, the lightest and the surest", () => {
    expect(plain(answerSentence(job, exampleCombination(), item(1, 2.31)))).toBe(
      "1528 of 19 656 combinations work; the lightest weighs 560 g, the surest has at least 2.31 × in 95 of 100 cases.",
    );
  });

  it.each([
    ["burns", "the best of the shortlist burns"],
    ["falls", "the best of the shortlist falls from somewhere"],
    ["over-rating", "the best of the shortlist has at least 2.31 × in 95 of 100 cases and is over a rating"],
  ] as const)("calls none the surest whose verdict is %s", (state, said) => {
    expect(plain(answerSentence(job, exampleCombination(), item(1, 2.31, true, state)))).toBe(
      `1528 of 19 656 combinations work; the lightest weighs 560 g, ${said}.`,
    );
  });

  it.each([
    [{ sets: 72, admissible: 0 }, "None of the 72 combinations works."],
    [{ sets: 1, admissible: 0 }, "The one combination does not work."],
    [{ sets: 72, admissible: 1 }, "1 of 72 combinations works."],
  ])("of %o says: %s", (counts, sentence) => {
    expect(answerSentence(counts, null, null)).toBe(sentence);
  });

  it("progressText tells solved, admissible and rate; a job that waits says so", () => {
    const running = {
      ...job,
      id: "a",
      state: "running" as const,
      solved: 5000,
      admissible: 12,
      startedAt: "2026-01-01T00:00:00Z",
      seconds: 2,
      request: chooseBody(),
      error: null,
      notes: [],
    };
    expect(plain(progressText(running))).toBe(
      "5000 of 19 656 combinations solved, 12 of them work so far, 2500 combinations a second.",
    );
    expect(progressText({ ...running, state: "queued" })).toMatch(/wait for another search/);
  });

  it.each([
    [0, { limit: "driving", broken: 9 }, "None of them works; the margin while driving keeps out most, 9."],
    [1, null, "1 of them works."],
    [5, null, "5 of them work."],
    [10, null, "Every one of them works."],
  ] as const)("previewText of %s of 10 combinations", (admissible, keepsOut, text) => {
    expect(previewText({ tried: 10, admissible, keepsOut })).toBe(text);
  });
});

describe("brokenText", () => {
  const names = wantedNames(wall, base);
  it("names the attitude, what it has and what is wanted", () => {
    expect(plain(brokenText({ limit: "driving", value: 1.16, allowed: 1.5 }, names))).toBe(
      "the wall while driving has 1.16 ×, 1.50 × wanted",
    );
  });

  it("of several attitudes says that it is the least of them, and the build's own by its name", () => {
    const attitudes = [
      { angle: 90, mode: "parked" },
      { angle: "worst", mode: "parked" },
      { angle: 153, mode: "driving" },
    ];
    const several = wantedNames(chooseBody({ wants: { attitudes } }).wants, base);
    expect(several).toEqual({ parked: "the least of 2 attitudes", driving: "the roof pane" });
  });

  it("says every limit in words of its own, its value known or not", () => {
    const said = LIMITS.flatMap((limit) => [
      brokenText({ limit, value: 2, allowed: 1 }, names),
      brokenText({ limit, value: null, allowed: 1 }, names),
    ]);
    for (const text of said) expect(text).toMatch(/ /);
    expect(said.join()).not.toMatch(/NaN|undefined|Infinity/);
    expect(new Set(said.filter((_, i) => i % 2 === 0)).size).toBe(LIMITS.length);
  });

  it("inOrOut names the first limit and counts the rest", () => {
    const broken = [
      { limit: "driving", value: 1.16, allowed: 1.5 },
      { limit: "time", value: 60, allowed: 240 },
    ];
    expect(plain(inOrOut(broken, names))).toBe(
      "out: the wall while driving has 1.16 ×, 1.50 × wanted; and 1 more",
    );
    expect(inOrOut([], names)).toMatch(/^in/);
  });
});

describe("trust in words", () => {
  const trust = exampleCombination().trust;
  it.each([
    [{}, "Rotor measured at this size, within the tested tip speeds.", []],
    [
      { scaled: true, sizeRatio: 1.2 },
      "Rotor scaled from 38 mm (×1.20), within the tested tip speeds.",
      ["scaled"],
    ],
    [
      { speedRatio: 1.4, extrapolated: true },
      "Rotor measured at this size, at ×1.40 the fastest tested tip speed, its flow beyond the tested range.",
      ["extrapolated"],
    ],
    [
      { basis: "two-point", scaled: true, sizeRatio: 1.2, speedRatio: 0.8 },
      "Rotor two-point: known from blocked and open readings alone, scaled from 38 mm (×1.20), at ×0.80 the slowest tested tip speed.",
      ["two-point", "scaled"],
    ],
    [
      { basis: "estimated", sizeRatio: null, speedRatio: null, extrapolated: true, coldWinding: true },
      "Rotor estimated from its geometry, ± 30 %, nothing of it was tested, winding taken cold, its thermal resistance is not known.",
      ["estimated"],
    ],
  ] as const)("of %o", (change, text, marks) => {
    const combination = exampleCombination({ trust: { ...trust, ...change } });
    expect(plain(trustText(combination))).toBe(text);
    expect(trustMarks(combination).map(({ word }) => word)).toEqual(marks);
  });

  it("a combination is named by its parts, size, gap, and throttle where it isn't full", () => {
    const combination = exampleCombination({ duty: 0.8, gap: 0.00061183 });
    expect(plain(sizedRotorText(book, combination))).toMatch(/^Bell motor, 18 mm · Swept nine 45.6 mm$/);
    expect(plain(restText(book, combination))).toBe(
      "throttle 80 % · Two cells, 450 mAh · gap 0.612 mm, Square lip, 96 by 84 mm",
    );
  });
});

describe("ties in words", () => {
  const tied = [1, 1, 1, 1, 5, 6, 6].map((place) => item(place));
  it("places that are shared are told as spans", () => {
    expect(tied.map((_, i) => placeText(tied, i))).toEqual(["1–4", "1–4", "1–4", "1–4", "5", "6–7", "6–7"]);
    expect(tiesText(tied)).toBe("1–4 tie: they differ by less than their uncertainty. So do 6–7.");
  });

  it("no ties and one combination alone are told apart", () => {
    expect(tiesText([item(1), item(2)])).toMatch(/^No two of them tie/);
    expect(tiesText([item(1)])).toBe("");
  });

  it("counts those that are sure enough, where that is asked for", () => {
    expect(plain(enoughText([item(1), item(2, 1, false)], 0.95) ?? "")).toBe(
      "1 combination of these 2 holds in 95 % of the cases or more.",
    );
    expect(enoughText(tied, null)).toBeNull();
  });
});

describe("reliefOf, what to relax so that a combination gets in", () => {
  const wants = chooseBody({ wants: { targetMargin: 1.5, mostWinding: 373.15, leastTime: 240 } }).wants;
  const draft = draftOf(chooseBody({ wants }));
  const relaxed = (limit: string, from: number, to: number) => {
    const relief = reliefOf({ limit, from, to, index: 3 }, wants);
    return { relief, draft: relief.apply?.(draft) };
  };

  it("a margin is rounded down, so that the combination still has it", () => {
    const { relief, draft: next } = relaxed("driving", 1.5, 1.42999);
    expect(plain(relief.label)).toBe("Relax the margin to 1.42 ×");
    expect(next?.texts["wants.targetMargin"]).toBe("1.42");
  });

  it("a winding's limit is rounded up, minutes down", () => {
    expect(relaxed("windingTemperature", 373.15, 380.2).draft?.texts["wants.mostWinding"]).toBe(
      "108\u202f°C",
    );
    const kept = { ...wants, leastKeptTime: 360 };
    const relief = reliefOf({ limit: "keptTime", from: 360, to: 340, index: 1 }, kept);
    expect(plain(relief.label)).toBe("Relax the minutes that the margin is kept to 5.6 min");
    expect(relaxed("time", 240, 230).draft?.texts["wants.leastTime"]).toBe("3.8\u202fmin");
  });

  it("a margin below 1 can't be wanted: it is said and no button does it", () => {
    const { relief } = relaxed("driving", 1.5, 0.83);
    expect(relief.apply).toBeNull();
    expect(plain(relief.label)).toMatch(/most that any combination has is 0.83 ×/);
  });

  it.each([
    ["motorVoltage", 7.4, 7.6],
    ["windingTemperature", 393.15, 400],
  ])("where a maker's %s stands in the way, ratings are left aside, with a caution", (limit, from, to) => {
    const { relief, draft: next } = relaxed(limit, from, to);
    expect(next?.ratings).toBe(false);
    expect(relief.caution).toMatch(/overheat/);
  });

  it("of a whole combination relaxes every want that it breaks, the margin to the lesser of parked and driving", () => {
    const combination = exampleCombination({
      broken: [
        { limit: "parked", value: 1.4, allowed: 1.5 },
        { limit: "driving", value: 1.31, allowed: 1.5 },
        { limit: "time", value: 180, allowed: 240 },
      ],
    });
    const relief = reliefOfCombination(combination, wants);
    const next = relief?.apply?.(draft);
    expect(next?.texts["wants.targetMargin"]).toBe("1.31");
    expect(next?.texts["wants.leastTime"]).toBe("3\u202fmin");
    expect(plain(relief?.label ?? "")).toBe("Relax the margin to 1.31 ×, relax the minutes to 3 min");
  });

  it("of a combination whose motor does not turn, or that falls, is nothing", () => {
    const broken = [{ limit: "point", value: null, allowed: 1 }];
    expect(reliefOfCombination(exampleCombination({ broken }), wants)).toBeNull();
    expect(
      reliefOfCombination(
        exampleCombination({ broken: [{ limit: "driving", value: 0.6, allowed: 1.5 }] }),
        wants,
      ),
    ).toBeNull();
  });
});

describe("the address of a view of a job", () => {
  it("comes back as it was written, what is usual left out", () => {
    const shown = { x: "time", y: "mass", look: 12, pins: [3, 4] } as const;
    expect(shownFrom(new URLSearchParams(shownQuery(shown)))).toEqual(shown);
    expect(shownQuery({ x: "mass", y: "margin", look: null, pins: [] })).toEqual({});
  });

  it("nonsense in it is left out, and no more than six combinations are pinned, each once", () => {
    const query = new URLSearchParams("x=colour&look=-1&pins=1,2,2,x,3,4,5,6,7");
    expect(shownFrom(query)).toEqual({ x: "mass", y: "margin", look: null, pins: [1, 2, 3, 4, 5, 6] });
    expect(withPin([1, 2], 2)).toEqual([1]);
    expect(withPin([1, 2, 3, 4, 5, 6], 7)).toEqual([1, 2, 3, 4, 5, 6]);
  });
});
