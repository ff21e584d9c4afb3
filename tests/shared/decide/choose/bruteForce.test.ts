import { describe, expect, it } from "vitest";
import type { Chunk, Column } from "#shared/decide/choose/columns.ts";
import { detailOf } from "#shared/decide/choose/detail.ts";
import { frontOf, USUAL_OBJECTIVES } from "#shared/decide/choose/front.ts";
import { nearestCombinations, relaxations, tallyOf } from "#shared/decide/choose/nearest.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import type { Problem, Wants } from "#shared/decide/choose/problem.ts";
import { rankedAll, rankedPage } from "#shared/decide/choose/rank.ts";
import { LIMITS } from "#shared/decide/choose/result.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { columnOf, meetingCombinations } from "#shared/decide/choose/values.ts";
import {
  dominatedBySome,
  everyPlace,
  type PlainCombination,
  plainCombination,
  plainlyBroken,
} from "#tests/support/plainChoice.ts";
import { CURVE, motor, pack, propeller, question, rotor, skirt, stand, WANTS } from "./questions.ts";

/** Small cells, so that a run followed second by second is short. */
const CELL = { capacity: 500, minimumVoltage: 3, resistance: 0.026, curve: CURVE, maxCurrent: 11 };
/** The engine's time is a quadrature: its stated accuracy. */
const TIME_AGREED = 1e-3;
const AGREED = 1e-12;

const JOINTS = {
  joints: [
    { name: "the bar", depth: 3e-4, width: 5e-3, met: "either" as const },
    { name: "the groove", depth: 1e-4, width: 0.04, met: "across" as const },
  ],
  span: 0.07,
};

const small = (wants: Partial<Wants>): Problem =>
  question({
    motors: [
      motor("small", { kv: 6200, resistance: 0.28, mass: 0.03, thermalResistance: 9 }),
      motor("middle", { thermalResistance: 6, windingLimit: 330 }),
      motor("still", { frictionTorque: 0.5 }),
    ],
    rotors: [
      rotor("swept", { sizes: rotor("swept").sizes.slice(1) }),
      rotor("unknown", { sizes: [{ diameter: 0.04, mass: 0.01, burstSpeed: null }] }),
    ],
    packs: [pack("two", 2, { cell: CELL }), pack("three", 3, { cell: CELL })],
    skirts: [
      skirt("lip", { gaps: [0.0003, 0.0006], joints: JOINTS }),
      skirt("slotted", { openings: [{ area: 1.2e-5 }], gaps: [0.0004] }),
    ],
    propellers: [
      propeller("grey", { sizes: propeller("grey").sizes.slice(1) }),
      propeller("small", { sizes: [{ diameter: 0.11, mass: 0.004 }] }),
    ],
    stands: [stand(null), stand("lip", { share: 0.1, skirtFriction: 0.3, mass: 0.03, crosses: true })],
    duties: [0.8, 1],
    wants: { ...WANTS, ...wants },
  });

function solved(problem: Problem) {
  const prepared = prepare(problem);
  const cuts = [0, 31, 64, prepared.count];
  const results: Chunk[] = cuts.slice(1).map((to, i) => solveChunk(prepared, cuts[i], to));
  const full = 4.18;
  const plain = everyPlace(problem).map((places) => plainCombination(problem, places, full));
  return { problem, prepared, results, plain };
}

const easy = solved(
  small({
    targetMargin: 1.05,
    leastCrossing: 1.02,
    leastTime: 42.5,
    leastKeptTime: 55,
    leastRotorFactor: 1.1,
    mostHeight: 0.0565,
    mostPrice: 36,
  }),
);
const hard = solved(
  small({
    attitudes: [{ angle: "worst", mode: "driving" }],
    targetMargin: 3.6,
    leastTime: 44,
    mostWinding: 450,
    leastRotorFactor: null,
    mostHeight: null,
    mostPrice: null,
    ratings: false,
  }),
);

/** Found only where they can still decide, in this order. */
const LATE: readonly string[] = ["time", "keptTime"];
/** @returns the limits that are known to be broken where the later ones are looked at only as long as they decide */
function knownBroken(expected: readonly string[]): string[] {
  const known = expected.filter((limit) => !LATE.includes(limit));
  for (const limit of LATE) {
    const decides = known.length <= 1 && !known.includes("point");
    if (decides && expected.includes(limit)) known.push(limit);
  }
  return known;
}

const brokenNames = (mask: number) => LIMITS.filter((_, place) => mask & (1 << place));
const maskAt = (results: readonly Chunk[], index: number) => {
  const chunk = results.find(({ from, count }) => index >= from && index < from + count);
  return chunk?.broken[index - chunk.from] ?? Number.NaN;
};
const meets = (combination: PlainCombination) => plainlyBroken(combination).length === 0;
const plainValue = (combination: PlainCombination, column: Column): number => {
  if (column === "margin" || column === "mass" || column === "time") return combination[column];
  if (column === "suction") return combination.prediction.suction;
  return combination.limits.find(({ limit }) => limit === column)?.value ?? Number.NaN;
};

describe.each([
  ["limits that some combinations meet", easy],
  ["limits that none meets", hard],
])(
  "a small question with %s, against every combination as a build of its own",
  (_, { prepared, results, plain }) => {
    it("has as many combinations, each the same parts", () => {
      expect(prepared.count).toBe(plain.length);
      plain.forEach(({ places, mass }, index) => {
        const detail = detailOf(prepared, results, index);
        expect(detail.places).toEqual(places);
        expect(detail.values.mass).toBeCloseToRelative(mass, AGREED);
      });
    });

    it("breaks the same limits, those of time where they decide", () => {
      plain.forEach((combination, index) => {
        const expected = plainlyBroken(combination).map(({ limit }) => limit);
        expect(brokenNames(maskAt(results, index))).toEqual(knownBroken(expected));
      });
    });

    it("says why not: the same limits in order, the time's too, with value and allowed", () => {
      plain.forEach((combination, index) => {
        const expected = plainlyBroken(combination);
        const { broken } = detailOf(prepared, results, index);
        expect(broken.map(({ limit }) => limit)).toEqual(expected.map(({ limit }) => limit));
        broken.forEach(({ limit, value, allowed }, i) => {
          expect(allowed).toBe(expected[i].allowed);
          if (Number.isNaN(expected[i].value)) expect(value).toBeNull();
          else if (limit !== "point" && expected[i].value !== 0)
            expect(value).toBeCloseToRelative(expected[i].value, LATE.includes(limit) ? TIME_AGREED : AGREED);
        });
      });
    });

    it("counts how many combinations each limit keeps out, and how many by itself", () => {
      const tally = tallyOf(results);
      expect(tally.meeting).toBe(plain.filter(meets).length);
      LIMITS.forEach((limit, place) => {
        if (LATE.includes(limit)) return;
        const breaking = plain.filter((combination) =>
          plainlyBroken(combination).some((broken) => broken.limit === limit),
        );
        expect(tally.broken[place]).toBe(breaking.length);
      });
      const alone = plain.map(plainlyBroken).filter((broken) => broken.length === 1);
      LIMITS.forEach((limit, place) => {
        if (limit !== "point")
          expect(tally.alone[place]).toBe(alone.filter(([only]) => only.limit === limit).length);
      });
    });

    it.each([
      ["margin", "most"],
      ["mass", "least"],
      ["suction", "most"],
      ["price", "least"],
      ["rotorFactor", "most"],
    ] as const)("ranks by %s, %s first, equals by index, unknown ones last", (column, want) => {
      const sign = want === "most" ? -1 : 1;
      const keys = plain.map((combination) => {
        const value = plainValue(combination, column);
        return Number.isNaN(value) ? Number.POSITIVE_INFINITY : Number((sign * value).toPrecision(11));
      });
      const order = rankedAll(prepared, results, { column, want });
      const found = [...order].map((index) => keys[index]);
      expect(found).toEqual([...keys].sort((a, b) => a - b));
      for (const [skip, count] of [
        [0, 5],
        [7, 10],
        [plain.length - 3, 10],
        [plain.length, 4],
      ])
        expect(rankedPage(prepared, results, { column, want }, { skip, count })).toEqual(
          order.slice(skip, skip + count),
        );
    });

    it("marks the same non-dominated combinations over margin, mass and time", () => {
      const meeting = plain
        .map((combination, index) => ({ combination, index }))
        .filter(({ combination }) => meets(combination));
      expect([...meetingCombinations(results)]).toEqual(meeting.map(({ index }) => index));
      const times = columnOf(prepared, results, "time");
      const keys = [
        meeting.map(({ combination }) => Number(combination.margin.toPrecision(11))),
        meeting.map(({ combination }) => -Number(combination.mass.toPrecision(11))),
        meeting.map(({ index }) => times[index]),
      ];
      const expected = meeting.filter((_set, i) => !dominatedBySome(keys, i)).map(({ index }) => index);
      expect([...frontOf(prepared, results)]).toEqual(expected);
      expect([...frontOf(prepared, results, USUAL_OBJECTIVES.slice(0, 2))]).toEqual(
        meeting.filter((_set, i) => !dominatedBySome(keys.slice(0, 2), i)).map(({ index }) => index),
      );
    });

    it("relaxes each limit alone by the least that lets a combination in", () => {
      const alone = plain.flatMap((combination, index) => {
        const broken = plainlyBroken(combination);
        return broken.length === 1 && broken[0].share < Number.POSITIVE_INFINITY
          ? [{ index, ...broken[0] }]
          : [];
      });
      const expected = LIMITS.flatMap((limit) => {
        const [least] = alone
          .filter((one) => one.limit === limit)
          .sort((a, b) => a.share - b.share || a.index - b.index);
        return least ? [least] : [];
      });
      const found = relaxations(prepared, results);
      expect(found.map(({ limit, index, from }) => ({ limit, index, from }))).toEqual(
        expected.map(({ limit, index, allowed }) => ({ limit, index, from: allowed })),
      );
      found.forEach(({ limit, to }, i) => {
        expect(to).toBeCloseToRelative(expected[i].value, LATE.includes(limit) ? TIME_AGREED : AGREED);
      });
    });

    it("names the nearest combinations, those of a time not stored among them", () => {
      const near = plain
        .map((combination, index) => ({
          index,
          shortfall: plainlyBroken(combination).reduce((sum, { share }) => sum + share, 0),
        }))
        .filter(({ shortfall }) => shortfall > 0 && shortfall < Number.POSITIVE_INFINITY)
        .sort((a, b) => a.shortfall - b.shortfall || a.index - b.index);
      for (const count of [1, 4, 500]) {
        const found = nearestCombinations(prepared, results, count);
        expect(found.map(({ index }) => index)).toEqual(near.slice(0, count).map(({ index }) => index));
        found.forEach(({ shortfall }, i) => {
          expect(Math.abs(shortfall - near[i].shortfall)).toBeLessThan(TIME_AGREED);
        });
      }
    });
  },
);

describe("nearest combinations of a question that none meets by far, so that no time is stored and the time alone tells them apart", () => {
  it("are sought among as many candidates as it takes to be sure", () => {
    const { prepared, results, plain } = solved(
      small({
        targetMargin: 1000,
        leastTime: 400,
        leastRotorFactor: null,
        mostHeight: null,
        mostPrice: null,
        ratings: false,
      }),
    );
    const missing = plain.map((combination) =>
      plainlyBroken(combination).reduce((sum, { share }) => sum + share, 0),
    );
    const [nearest] = nearestCombinations(prepared, results, 1);
    expect(missing[nearest.index]).toBeLessThan(Math.min(...missing) + TIME_AGREED);
    expect(Math.abs(nearest.shortfall - missing[nearest.index])).toBeLessThan(TIME_AGREED);
  });
});

describe("the two small questions", () => {
  it("are what they are called: some combinations meet the first, none the second, several limits bind", () => {
    expect(tallyOf(easy.results).meeting).toBeGreaterThan(2);
    expect(tallyOf(hard.results).meeting).toBe(0);
    const binding = new Set(
      easy.plain.flatMap((combination) => plainlyBroken(combination).map(({ limit }) => limit)),
    );
    expect(binding.size).toBeGreaterThan(6);
    expect(binding).toContain("keptTime");
    expect(relaxations(hard.prepared, hard.results).length).toBeGreaterThan(0);
  });

  it("have no time so near to what is asked that its accuracy decides", () => {
    for (const { plain, problem } of [easy, hard])
      for (const { time } of plain)
        if (!Number.isNaN(time))
          expect(Math.abs(time / (problem.wants.leastTime ?? 1) - 1)).toBeGreaterThan(TIME_AGREED);
  });
});
