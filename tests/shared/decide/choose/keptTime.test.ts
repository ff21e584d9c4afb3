import { describe, expect, it } from "vitest";
import { keptTimeAlone } from "#shared/decide/choose/alone.ts";
import { runOf } from "#shared/decide/choose/input.ts";
import { tallyOf } from "#shared/decide/choose/nearest.ts";
import { placesOf } from "#shared/decide/choose/places.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import type { Problem, Wants } from "#shared/decide/choose/problem.ts";
import { rankedAll } from "#shared/decide/choose/rank.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { keepForMargin } from "#shared/decide/size/keep.ts";
import { answerOrNull } from "#shared/numeric/errors.ts";
import type { Keep } from "#shared/physics/rundown/input.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { CURVE, mixedQuestion, openQuestion, pack, question, skirt } from "./questions.ts";

/** A small cell, so that a run followed step by step is short. */
const cell = { capacity: 250, minimumVoltage: 3, resistance: 0.026, curve: CURVE };
/** A curve without a kink, on which the run-down's own steps miss nothing. */
const STRAIGHT = [
  [0, 2.7],
  [1, 4.2],
] as const;
const AGREED = 1e-9;
/** Of the run-down [s]. */
const STEP = 0.5;
/** A run of fewer steps than fifty is not followed to nine digits [s]. */
const FEW = 50 * STEP;
/** What such a step misses where it goes over a kink of the curve. */
const OVER_KINKS = 1e-6;

/** Towards the pack's greatest power the throttle rises ever faster: √ of what voltage is left. */
const AT_THE_POWER = 1e-5;

const amountOf = (keep: Keep) => ("thrust" in keep ? keep.thrust : keep.pressure);

/** POST /rundown with `keep`, for the combination as a build. */
function followed({ problem, radix }: ReturnType<typeof prepare>, index: number) {
  const { attitudes, targetMargin: margin } = problem.wants;
  const run = runOf(problem, placesOf(radix, index));
  return answerOrNull(() => {
    const keeps = attitudes.map(({ angle, mode }) => keepForMargin(run, { angle, mode, margin }));
    const [keep] = keeps.sort((a, b) => amountOf(b) - amountOf(a));
    const { end, keep: kept } = runDown({ ...run, angles: [], keep, step: STEP });
    const lost = kept?.fullThrottleFrom ?? null;
    return { plain: lost ?? end.time, ending: lost === null ? end.reason : "full throttle" };
  });
}

/** The vehicles of the mixed questions hardly hold: a margin that some of their combinations keep, and some lose on the way. */
const wants = (change: Partial<Wants> = {}): Wants => ({ ...question().wants, targetMargin: 0.4, ...change });

function pairs(problem: Problem, every: number) {
  const prepared = prepare(problem);
  const indices = Array.from({ length: Math.floor(prepared.count / every) }, (_, i) => i * every);
  return indices.flatMap((index) => {
    const run = followed(prepared, index);
    const isFollowed = run !== null && (run.plain === 0 || run.plain > FEW);
    return !isFollowed ? [] : [{ index, ...run, found: keptTimeAlone(prepared, index) }];
  });
}

describe("how long a controller keeps the wanted margin, against the run-down that keeps it", () => {
  const packsOf = (curve: typeof CURVE | typeof STRAIGHT) =>
    [3, 2.9, 2.2].map((minimumVoltage, i) =>
      pack(`${i}`, i + 1, { parallel: 1 + (i % 2), cell: { ...cell, minimumVoltage, curve } }),
    );

  it.each([
    ["rotors in a duct of every kind", mixedQuestion(5), 1499, 0.4],
    ["open propellers with drift up, down and none", openQuestion(6), 79, 0.1],
  ])("agrees to nine digits: %s", (_, base, every, targetMargin) => {
    const found = pairs({ ...base, packs: packsOf(STRAIGHT), wants: wants({ targetMargin }) }, every);
    expect(found.filter(({ plain }) => plain > 0).length).toBeGreaterThan(12);
    expect(new Set(found.map(({ ending }) => ending))).toEqual(
      new Set(["minimum-voltage", "empty", "full throttle"]),
    );
    for (const { plain, found: time } of found)
      if (plain === 0) expect(time).toBe(0);
      else expect(time).toBeCloseToRelative(plain, AGREED);
  });

  it("agrees on a curve with kinks, to what the run-down's steps miss over them", () => {
    const found = pairs({ ...mixedQuestion(7), packs: packsOf(CURVE), wants: wants() }, 2999);
    expect(found.filter(({ plain }) => plain > 0).length).toBeGreaterThan(5);
    for (const { plain, found: time } of found)
      if (plain === 0) expect(time).toBe(0);
      else expect(time).toBeCloseToRelative(plain, OVER_KINKS);
  });

  it("agrees within 0.1 % for cells whose resistance rises towards empty, and to the digit where it doesn't after all", () => {
    const resistanceCurve = [
      [0.05, 0.07],
      [0.3, 0.035],
      [0.9, 0.024],
    ] as const;
    const asked = (change: object): Problem => ({
      ...mixedQuestion(5),
      packs: packsOf(CURVE).map((each) => ({ ...each, cell: { ...each.cell, ...change } })),
      wants: wants(),
    });
    const found = pairs(asked({ resistanceCurve }), 2999);
    expect(found.filter(({ plain }) => plain > 0).length).toBeGreaterThan(2);
    for (const { plain, found: time } of found)
      if (plain === 0) expect(time).toBe(0);
      else expect(time).toBeCloseToRelative(plain, 1e-3);
    const [one, same] = [{}, { resistanceCurve: [[0.5, cell.resistance]] }].map((change) =>
      prepare(asked(change)),
    );
    for (let index = 0; index < one.count; index += 20_011)
      expect(keptTimeAlone(same, index)).toBe(keptTimeAlone(one, index));
  });

  it("agrees where the pack's greatest power ends it before full throttle does", () => {
    // So weak that the two roots of the throttle meet below 1: V falls to 2√(R_b·I·needed).
    const packs = [
      pack("weak", 4, { cell: { ...cell, minimumVoltage: 1, resistance: 0.9, curve: STRAIGHT } }),
    ];
    const attitudes = [{ angle: 180, mode: "parked" }] as const;
    const asked = question({ packs, wants: wants({ attitudes, targetMargin: 0.7 }) });
    const prepared = prepare(asked);
    const run = runOf(asked, placesOf(prepared.radix, 0));
    const keep = keepForMargin(run, { ...attitudes[0], margin: 0.7 });
    const { samples } = runDown({ ...run, angles: [], keep });
    const steady = samples.filter(({ duty }) => duty !== 1);
    expect(steady.at(-1)?.duty).toBeGreaterThan(0.4);
    expect(steady.at(-1)?.duty).toBeLessThan(0.9);
    const found = pairs(asked, 23).filter(({ plain }) => plain > 0);
    expect(found.length).toBeGreaterThan(3);
    for (const { plain, found: time } of found) expect(time).toBeCloseToRelative(plain, AT_THE_POWER);
  });
});

describe("how long a controller keeps the wanted margin, in closed form", () => {
  const level = [
    [0, 3.7],
    [1, 3.7],
  ] as const;

  it("on a cell of one voltage is N_p·C·z/(δ·I + I_aux), whatever throttle the combination is tried at", () => {
    const packs = [pack("level", 3, { parallel: 3, cell: { ...cell, curve: level } })];
    const fixed = { ...question().fixed, charge: 0.6 };
    const prepared = prepare(question({ packs, fixed, duties: [0.7, 1], wants: wants() }));
    for (let index = 0; index < prepared.count; index += 17) {
      const time = keptTimeAlone(prepared, index);
      const run = runOf(prepared.problem, placesOf(prepared.radix, index));
      const [keep] = wants()
        .attitudes.map(({ angle, mode }) => keepForMargin(run, { angle, mode, margin: 0.4 }))
        .sort((a, b) => amountOf(b) - amountOf(a));
      const [{ packCurrent }] = runDown({ ...run, angles: [], keep }).samples;
      if (time > 0) expect(time).toBeCloseToRelative((3 * 250 * 0.6) / packCurrent, 1e-12);
      const gaps = prepared.radix.fittedSkirts.length;
      expect(keptTimeAlone(prepared, index % (2 * gaps))).toBe(
        keptTimeAlone(prepared, (index % gaps) + gaps * (Math.floor(index / gaps) % 2)),
      );
    }
  });

  it("is 0 where the loaded cell is at its minimum from the start, and where even full throttle is too little", () => {
    const packs = [pack("low", 3, { cell: { ...cell, minimumVoltage: 3.7, curve: level } })];
    expect(keptTimeAlone(prepare(question({ packs, wants: wants() })), 0)).toBe(0);
    expect(keptTimeAlone(prepare(question({ wants: wants({ targetMargin: 40 }) })), 0)).toBe(0);
  });

  it("has no end where the vehicle stays by its weight alone, and is 0 where more pull brakes more than it grips", () => {
    const floor = wants({ attitudes: [{ angle: 0, mode: "parked" }] });
    expect(keptTimeAlone(prepare(question({ wants: floor })), 0)).toBe(Number.POSITIVE_INFINITY);
    const rubbing = skirt("rubbing", { share: 0.95, skirtFriction: 1.5, wheelFriction: 0.3 });
    const climb = wants({ attitudes: [{ angle: 90, mode: "driving" }] });
    expect(keptTimeAlone(prepare(question({ skirts: [rubbing], wants: climb })), 0)).toBe(0);
  });
});

describe("a search in which keeping the margin is a wish", () => {
  const asked = (leastKeptTime: number | null) =>
    prepare(
      question({
        wants: {
          attitudes: wants().attitudes,
          targetMargin: 0.6,
          leastTime: 60,
          leastRotorFactor: 1.1,
          leastKeptTime,
        },
      }),
    );

  it("finds it for every combination that meets all else, ranks by it, and keeps out those that fall short", () => {
    const free = asked(0);
    const chunk = solveChunk(free, 0, free.count);
    const meeting = Array.from(chunk.broken.keys()).filter((at) => chunk.broken[at] === 0);
    expect(meeting.length).toBeGreaterThan(10);
    for (const at of meeting) expect(chunk.keptTime[at]).toBe(keptTimeAlone(free, at));
    const [best, second] = rankedAll(free, [chunk], { column: "keptTime", want: "most" });
    const most = Math.max(...chunk.keptTime.filter((time) => !Number.isNaN(time)));
    expect(chunk.keptTime[best]).toBe(most);
    const between = (chunk.keptTime[best] + chunk.keptTime[second]) / 2;
    const strict = asked(between);
    const kept = solveChunk(strict, 0, strict.count);
    const expected = meeting.filter((at) => chunk.keptTime[at] >= between).length;
    expect(tallyOf([kept]).meeting).toBe(expected);
    expect(expected).toBeLessThan(meeting.length);
  });

  it("isn't found where it is no wish, and changes nothing else", () => {
    const [without, withIt] = [asked(null), asked(0)].map((each) => solveChunk(each, 0, each.count));
    expect(without.keptTime.every(Number.isNaN)).toBe(true);
    expect(without.time).toEqual(withIt.time);
    expect(without.broken).toEqual(withIt.broken);
  });
});
