import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { verdictCase } from "#shared/book/verdictCase.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { withSetting } from "#shared/decide/verdict/change.ts";
import { burnsAfter, type Case, chanceOf, found } from "#shared/decide/verdict/judge.ts";
import { isDestroyed } from "#shared/decide/verdict/states.ts";
import { verdictOf } from "#shared/decide/verdict/verdict.ts";
import { surelyHeldMass, type WayOut, waysOut } from "#shared/decide/verdict/wayOut.ts";
import { wayOutText } from "#shared/decide/verdict/wayOutWords.ts";
import { detailOf, sentenceOf } from "#shared/decide/verdict/words.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

function caseOf(change: Partial<Build> = {}, of: Book = book, id = "pane-crawler"): Case {
  const stored = of.builds.find((each) => each.id === id);
  if (!stored) throw new Error(`the demo has no ${id}`);
  const build = { ...stored.data, ...change };
  const made = verdictCase(of, build, resolveBuild(of, build));
  if (!made) throw new Error(`${id} has no numbers`);
  return made;
}

/** The demo with a rotor printed so badly across its layers that it bursts on three cells [Pa]. */
const weakly = (strength: number): Book => ({
  ...book,
  rotors: book.rotors.map((rotor) =>
    rotor.id === "swept-nine" && rotor.data.material
      ? { ...rotor, data: { ...rotor.data, material: { ...rotor.data.material, strength } } }
      : rotor,
  ),
});
/** The vehicle of the demo's crawler as a build states it; its running gear is rigid. */
const rigid = (): Build["vehicle"] => ({
  ...caseOf().build.vehicle,
  verticalStiffness: null,
  gapLoad: null,
});
const THREE_CELLS = { overrides: { series: 3 } };
const judged = (of: Case) => verdictOf(found(of));
const plain = (text: string) => text.replaceAll("\u202f", " ");

/** The same setting one of its steps back towards where it stood. */
const STEPS = { throttle: 0.01, cells: 1, mass: 1e-3, gap: 1e-5 } as const;
const oneBack = (of: Case, { setting, value }: WayOut, towards: 1 | -1) =>
  judged(withSetting(of, setting, Number((value - towards * STEPS[setting]).toPrecision(12))));

describe("three cells in series in the demo's two-cell crawler", () => {
  it("burns: no word of holding anywhere, and margins far above the target don't count", () => {
    const of = caseOf(THREE_CELLS);
    const verdict = judged(of);
    expect(verdict.state).toBe("burns");
    expect(verdict.least?.margin).toBeGreaterThan(2.5);
    expect(sentenceOf(verdict) + detailOf(verdict)).not.toMatch(/holds|tightest/i);
  });

  it("bursts, where its rotor is weaker as well: the worse of the two is said", () => {
    const verdict = judged(caseOf(THREE_CELLS, weakly(9.136e6)));
    expect(verdict.state).toBe("bursts");
    expect(verdict.reason).toMatchObject({ kind: "burst", share: expect.closeTo(0.919, 3) });
    expect(sentenceOf(verdict) + detailOf(verdict)).not.toMatch(/holds|tightest/i);
  });

  it("burns after the seconds that the winding's own integration gives", () => {
    const of = caseOf(THREE_CELLS);
    const after = burnsAfter(of);
    expect(after).toBeGreaterThan(20);
    expect(after).toBeLessThan(30);
    expect(plain(sentenceOf(verdictOf({ ...found(of), burnsAfter: after })))).toMatch(
      / It passes that 2\d s after a cold start\.$/,
    );
  });
});

describe("waysOut", () => {
  it.each<[string, Case]>([
    ["burns", caseOf(THREE_CELLS)],
    ["bursts", caseOf(THREE_CELLS, weakly(9.136e6))],
    ["is over a rating", caseOf({ charge: 1, supply: { duty: 1, driverResistance: 0, auxCurrent: 2.5 } })],
  ])("of a build that %s: the largest throttle that keeps every limit, and the most cells", (_what, of) => {
    const ways = waysOut(of, judged(of));
    const throttle = ways.find(({ setting }) => setting === "throttle");
    if (!throttle) throw new Error("no throttle was found");
    expect(isDestroyed(throttle.verdict.state)).toBe(false);
    expect(throttle.verdict.passed).toEqual([]);
    const back = oneBack(of, throttle, -1);
    expect(isDestroyed(back.state) || back.passed.length > 0).toBe(true);
    expect(judged(withSetting(of, "throttle", throttle.value)).state).toBe(throttle.verdict.state);
  });

  it("of three cells: two would do as well, and the sentence says down to which speed it holds again", () => {
    const of = caseOf(THREE_CELLS);
    const verdict = judged(of);
    const ways = waysOut(of, verdict);
    expect(ways.map(({ setting, value }) => [setting, value])).toContainEqual(["cells", 2]);
    expect(plain(wayOutText(verdict, ways))).toMatch(
      /^Holds again from \d\d [1-9]00 rpm down: throttle \d\d %\. Or 2 cells in series\.$/,
    );
  });

  it("of limits that leave too little pull: says that no throttle does both, with both figures", () => {
    const of = caseOf({ ...THREE_CELLS }, book, "roof-crawler");
    const verdict = judged(of);
    expect(plain(wayOutText(verdict, waysOut(of, verdict)))).toMatch(
      /^No throttle does both: with throttle \d\d % every limit is kept, and it falls, with 0\.\d\d ×\.$/,
    );
  });

  it("of a build that falls and wants no more than to hold: each setting is named once", () => {
    const of = caseOf({ vehicle: { ...rigid(), mass: 1 }, targetMargin: 1 });
    const named = waysOut(of, judged(of)).map(({ setting }) => setting);
    expect(named.length).toBeGreaterThan(0);
    expect(new Set(named).size).toBe(named.length);
  });

  it("of a build that falls: the heaviest mass that holds, and the one with the target, as the margin's inverse says", () => {
    const of = caseOf({}, book, "roof-crawler");
    const verdict = judged(of);
    const { mass } = of.build.vehicle;
    const masses = waysOut(of, verdict).filter(({ setting }) => setting === "mass");
    // F_required is proportional to the mass: m·margin holds, m·margin/1.5 has the target; whole grams below.
    const margin = verdict.least?.margin ?? 0;
    const expected = [mass * margin, (mass * margin) / 1.5].map((kg) => Math.floor(kg * 1000) / 1000);
    expect(masses.map(({ value }) => value).sort((a, b) => b - a)).toEqual(
      expected.map((kg) => expect.closeTo(kg, 9)),
    );
    for (const way of masses) expect(way.verdict.least?.margin).toBeGreaterThanOrEqual(way.wanted ?? 0);
  });

  it("of a tight build: mass and gap down to the target; none at a gap that alone was measured", () => {
    const of = caseOf({ vehicle: { ...rigid(), mass: 0.65 } });
    const verdict = judged(of);
    expect(verdict.state).toBe("tight");
    const ways = waysOut(of, verdict);
    for (const way of ways) expect(way.verdict.least?.margin).toBeGreaterThanOrEqual(1.5);
    const measured =
      "skirt" in of.build && (of.build.skirt as { measuredLeak: unknown }).measuredLeak !== null;
    expect(ways.map(({ setting }) => setting)).toEqual(measured ? ["mass"] : ["mass", "gap"]);
    expect(plain(wayOutText(verdict, ways))).toMatch(/^The 1\.5 × wanted is there from \d+ g down/);
  });

  it("of a rotor that stands: the throttle from which it holds, not the one at which it merely turns", () => {
    const of = caseOf({ supply: { duty: 0.01, driverResistance: 0.3, auxCurrent: 0 } });
    const verdict = judged(of);
    expect(verdict.reason.kind).toBe("standing");
    const [way] = waysOut(of, verdict).filter(
      ({ setting, wanted }) => setting === "throttle" && wanted === 1,
    );
    expect(way.verdict.least?.margin).toBeGreaterThanOrEqual(1);
    expect(oneBack(of, way, 1).least?.margin).toBeLessThan(1);
  });

  it("of a build on too few cells: so many more as hold without passing a limit", () => {
    const of = caseOf({ overrides: { series: 1 } });
    const verdict = judged(of);
    const cells = waysOut(of, verdict).filter(({ setting }) => setting === "cells");
    expect(cells.map(({ value }) => value)).toEqual([2, 2]);
    expect(plain(wayOutText(verdict, waysOut(of, verdict)))).toMatch(/with 2 cells in series/);
  });

  it("of a build that holds: none", () => {
    const of = caseOf();
    expect(judged(of).state).toBe("holds");
    expect(waysOut(of, judged(of))).toEqual([]);
  });
});

describe("surelyHeldMass", () => {
  const of = caseOf({ vehicle: { ...rigid(), mass: 0.88 } });
  const uncertainty = { "vehicle.wheelFriction": 0.06 };
  const angle = found(of).worst.driving.angle;
  const sample = (at: Case) =>
    chanceOf(uncertaintyOf(at.build, { uncertainty, samples: 512, angles: [90, 180, angle] }), at.attitudes);

  it("of a chance below 95 %: a mass in whole grams at which sampling gives 95 % or more", () => {
    const chance = sample(of);
    if (!chance) throw new Error("nothing was sampled");
    expect(chance.holds).toBeLessThan(0.95);
    const way = surelyHeldMass(of, chance, sample);
    if (!way) throw new Error("no mass was found");
    expect(way.value * 1000).toBeCloseTo(Math.round(way.value * 1000), 9);
    expect(sample(withSetting(of, "mass", way.value))?.holds).toBeGreaterThanOrEqual(0.95);
    // The margin goes with the inverse of the mass, so the first guess is m times the margin that 95 % reach.
    expect(way.value).toBeCloseTo(0.88 * (chance.margin5 ?? 0), 2);
    const verdict = verdictOf({ ...found(of), chance, target: 1 });
    expect(plain(wayOutText(verdict, [way]))).toBe(`Sure from ${Math.round(way.value * 1000)} g down.`);
  });

  it("of a build that can't be made sure by its mass: null", () => {
    const never = () => ({ name: "the wall", angle: 90, holds: 0.2, margin5: 0 });
    expect(surelyHeldMass(of, never(), never)).toBeNull();
  });
});
