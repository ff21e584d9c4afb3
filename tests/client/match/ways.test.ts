import { describe, expect, it } from "vitest";
import { answerTo, replyTo } from "#client/views/match/ways/answer.ts";
import { waysSentence } from "#client/views/match/ways/heading.ts";
import { decimalsApart, roundedSafely } from "#client/views/match/ways/rounding.ts";
import { effectsText, valueToTry, wayCells, windingCaution } from "#client/views/match/ways/wayWords.ts";
import type { Way } from "#shared/decide/ways/ways.ts";
import { predict } from "#shared/physics/predict.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const base = {
  state: "does",
  from: null,
  to: null,
  best: { value: 0, margin: 2 },
  effects: null,
  charge: null,
} as const;
const gap: Way & { charge: null } = {
  ...base,
  handle: "gap",
  now: 6e-4,
  limits: [0, 5e-3],
  value: 4.1999e-4,
  bound: "at-most",
  to: 4.1999e-4,
};
const rotor = {
  ...gap,
  handle: "diameter",
  now: 0.04,
  limits: [0.02, 0.08],
  value: 0.04311,
  bound: "at-least",
  from: 0.04311,
  to: null,
} as const;

describe("roundedSafely", () => {
  it("rounds a most down and a least up, and leaves what lies on the grid", () => {
    expect(roundedSafely(0.41999, "at-most", 2)).toBe(0.41);
    expect(roundedSafely(0.41001, "at-least", 2)).toBe(0.42);
    expect(roundedSafely(0.42, "at-most", 2)).toBe(0.42);
    expect(roundedSafely(0.1 + 0.2, "at-least", 1)).toBe(0.3);
  });

  it("takes as many decimals as keep a narrow range one", () => {
    expect(decimalsApart(47.22, 47.28, 1)).toBe(2);
    expect(decimalsApart(47.2, 48, 1)).toBe(1);
  });
});

describe("wayCells", () => {
  it("of a handle that does: value with unit, rounded to the side that holds", () => {
    expect(wayCells(gap)).toEqual({ label: "Gap", now: "0.60\u202fmm", goal: "≤ 0.41\u202fmm" });
    expect(wayCells(rotor).goal).toBe("≥ 43.2\u202fmm");
    expect(wayCells({ ...rotor, to: 0.0647 }).goal).toBe("43.2 to 64.7\u202fmm");
  });

  it("of a handle that does not: the best it can, and where", () => {
    const never = { ...rotor, state: "never", value: null, best: { value: 0.0546, margin: 1.287 } } as const;
    expect(wayCells(never).goal).toBe("no value of this alone works; 1.29\u202f× at best, at 54.6\u202fmm");
    expect(wayCells({ ...never, now: 0.0546 }).goal).toMatch(/at best, as it stands$/);
  });

  it("of a handle that already does: how far it may go", () => {
    expect(wayCells({ ...gap, state: "already" }).goal).toBe("up to 0.41\u202fmm");
    expect(wayCells({ ...gap, state: "already", value: null, bound: null, to: null }).goal).toBe("any value");
    const series = { ...rotor, handle: "series", now: 2, value: 2, from: 2, state: "already" } as const;
    expect(wayCells(series)).toEqual({ label: "Cells in series", now: "2", goal: "no fewer than 2" });
  });
});

describe("effectsText", () => {
  const effects = {
    windingTemperature: { now: 350, after: 359.2 },
    tipSpeed: { now: 60, after: 63.5 },
    rotorStress: 1.12,
    packCurrent: { now: 5, after: 6 },
    runTime: { now: 500, after: 416 },
  };

  it("says heat, stress and minutes, signed", () => {
    expect(effectsText(effects)).toBe("+9\u202fK winding, 12\u202f% more rotor stress, 1.4\u202fmin less");
  });

  it("of a change without any: says so", () => {
    const none = { now: 1, after: 1 };
    expect(effectsText({ ...effects, windingTemperature: none, rotorStress: 1, runTime: none })).toBe(
      "no cost in heat, stress or time",
    );
  });

  it("of what is not known: says nothing of it", () => {
    expect(effectsText({ ...effects, windingTemperature: null, runTime: null })).toBe(
      "12\u202f% more rotor stress",
    );
  });

  it("warns of a winding beyond its limit alone", () => {
    expect(windingCaution(effects, 358.15)).toBe("Winding at 86\u202f°C; it takes 85\u202f°C");
    expect(windingCaution(effects, 360)).toBeNull();
    expect(windingCaution(effects, null)).toBeNull();
    const cooler = { ...effects, windingTemperature: { now: 370, after: 365 } };
    expect(windingCaution(cooler, 358.15)).toBeNull();
  });
});

describe("valueToTry", () => {
  it("is the shown value, on the side that holds", () => {
    expect(valueToTry(gap)).toBeCloseToRelative(4.1e-4, 1e-12);
  });

  it("of a stretch narrower than the shown digits: the value as found", () => {
    expect(valueToTry({ ...gap, from: 4.195e-4 })).toBe(gap.value);
  });

  it("of a cell voltage: the charge in whole per cent; none without the cell's curve", () => {
    const voltage = { ...rotor, handle: "cellVoltage", value: 3.9 } as const;
    expect(valueToTry({ ...voltage, charge: 0.731 })).toBe(0.74);
    expect(valueToTry({ ...voltage, charge: null })).toBeNull();
  });

  it("of the skirt's area, which no handle sets: none", () => {
    expect(valueToTry({ ...gap, handle: "area" })).toBeNull();
  });
});

describe("answerTo", () => {
  const cell = {
    capacity: 3600,
    minimumVoltage: 3,
    resistance: 0.026,
    curve: [
      [0, 3],
      [0.5, 3.7],
      [1, 4.18],
    ] as [number, number][],
  };
  const pack = {
    series: 2,
    parallel: 1,
    openCircuitVoltage: 3.7,
    cellResistance: 0.026,
    wireResistance: 0.014,
  };
  const build = { ...PANE_CRAWLER, pack };
  const asked = { attitude: 180, mode: "parked", targetMargin: 4.2 } as const;
  const sizes = [{ testedDiameter: 0.04, testedTipSpeed: 60 }];
  const question = { build, cell, sizes: [], windingLimit: null, asked, crossing: null };

  it("gives what trying it gives: the target is met at the shown value", () => {
    const { ways } = answerTo(question);
    const way = ways.find(({ handle }) => handle === "gap");
    const value = way && valueToTry(way);
    const tried = predict({ ...build, skirt: { ...build.skirt, gap: value ?? 1 } });
    expect(tried.attitudes[2].parked.margin).toBeGreaterThanOrEqual(4.2);
    expect(tried.attitudes[2].parked.margin).toBeLessThan(4.4);
  });

  it("gives the cell voltage as a charge too", () => {
    const standing = predict(build).attitudes[2].parked.margin ?? 0;
    const { ways } = answerTo({ ...question, asked: { ...asked, targetMargin: 1.05 * standing } });
    const way = ways.find(({ handle }) => handle === "cellVoltage");
    expect(way?.state).toBe("does");
    expect(way?.charge).toBeGreaterThan(0.5);
    expect(ways.filter(({ charge }) => charge !== null).length).toBe(1);
  });

  it("takes the size correction of the nearest tested diameter at each diameter", () => {
    const plain = answerTo(question).ways.find(({ handle }) => handle === "diameter");
    const corrected = answerTo({ ...question, sizes }).ways.find(({ handle }) => handle === "diameter");
    expect(corrected?.best.margin).not.toBe(plain?.best.margin);
  });

  it("of a propeller: no skirt's handles", () => {
    const { skirt: _skirt, ...rest } = build;
    const { ways } = answerTo({ ...question, build: { ...rest, rotor: PANE_PROPELLER } });
    expect(ways.map(({ handle }) => handle)).not.toContain("gap");
  });

  it("of a build that can't be: said in words, not thrown", () => {
    const reply = replyTo({ ...question, build: { ...build, pack: { ...pack, series: 0 } } });
    expect(reply).toEqual({ problem: expect.stringMatching(/^pack\.series is 0/) });
  });
});

describe("waysSentence", () => {
  const way = { ...gap, charge: null };
  it("says where it stands, what is wanted, and whether anything alone does it", () => {
    expect(waysSentence({ margin: 1.1, joints: [], kept: null, ways: [way] }, 1.5, "the wall")).toBe(
      "1.10\u202f× for the wall, 1.50\u202f× wanted. One setting alone works:",
    );
    expect(waysSentence({ margin: 1.1, joints: [], kept: null, ways: [] }, 1.5, "the wall")).toMatch(
      /No setting alone works/,
    );
    expect(waysSentence({ margin: 2, joints: [], kept: null, ways: [way] }, 1.5, "the wall")).toMatch(
      /may go so far/,
    );
    expect(waysSentence({ margin: null, joints: [], kept: null, ways: [way] }, 1.5, "the floor")).toBe(
      "No pull is needed for the floor.",
    );
  });
});
