import { describe, expect, it } from "vitest";
import { FLAG } from "#shared/decide/choose/columns.ts";
import { ductedInput, openInput } from "#shared/decide/choose/input.ts";
import { placesOf } from "#shared/decide/choose/places.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import type { Problem } from "#shared/decide/choose/problem.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { skirtOver } from "#shared/physics/joints.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import type { AnyPrediction } from "#shared/physics/predictAny.ts";
import { predictPropeller } from "#shared/physics/propeller.ts";
import { mixedQuestion, openQuestion } from "./questions.ts";

const AGREED = 1e-12;
/** Two iterations to one root: the prediction's own stops at 1e-12 of the speed, the winding's temperature around it. */
const OPEN_AGREED = 1e-9;
const CHECKED = 1000;

const margin = (value: number | null) => value ?? Number.POSITIVE_INFINITY;

function leastOf(prediction: AnyPrediction, problem: Problem, mode: "parked" | "driving"): number {
  const wanted = problem.wants.attitudes.filter((attitude) => attitude.mode === mode);
  const margins = wanted.map(({ angle }) =>
    angle === "worst"
      ? prediction.worst[mode].margin
      : (prediction.attitudes.find((attitude) => attitude.angle === angle)?.[mode].margin ?? null),
  );
  return Math.min(...margins.map(margin));
}

/** Equal to 1e-12; 0 and infinite ones exactly. */
function agreesTo(digits: number, index: number, what: string, received: number, expected: number): void {
  if (received === expected) return;
  if (!(Math.abs(received - expected) <= digits * Math.abs(expected)))
    expect.fail(`set ${index}: ${what} ${received} against ${expected}`);
}

const agrees = (index: number, what: string, received: number, expected: number): void =>
  agreesTo(AGREED, index, what, received, expected);

/** Null where a prediction is refused: the size correction leaves a slow rotor no efficiency. */
function orRefused<P>(ask: () => P): P | null {
  try {
    return ask();
  } catch (error) {
    if (error instanceof OutOfRangeError) return null;
    throw error;
  }
}

const answered = (input: PredictInput) => orRefused(() => predict(input, [90, 153]));

const problem = mixedQuestion(7);
const prepared = prepare(problem);
const chunk = solveChunk(prepared, 0, prepared.count);
const random = createRandom(11);
const indices = Array.from({ length: CHECKED }, () => Math.floor(random.uniform() * prepared.count));

describe("1 000 random combinations of a question with every kind of part, against the prediction of each as a build", () => {
  it("have its speed, flow, pressure, suction, margins, winding and current to 1e-12", () => {
    let [standing, refused] = [0, 0];
    for (const index of indices) {
      const input = ductedInput(problem, placesOf(prepared.radix, index));
      const prediction = answered(input);
      if (!prediction) {
        refused += 1;
        expect(chunk.flags[index] & FLAG.unsolved).toBe(FLAG.unsolved);
        continue;
      }
      const { point } = prediction;
      const off = chunk.flags[index] & FLAG.noPoint;
      expect(point === null).toBe(off !== 0);
      agrees(index, "parked", chunk.parked[index], leastOf(prediction, problem, "parked"));
      agrees(index, "driving", chunk.driving[index], leastOf(prediction, problem, "driving"));
      if (!point) {
        standing += 1;
        continue;
      }
      agrees(index, "speed", chunk.speed[index], point.speed);
      agrees(index, "flow", chunk.flow[index], point.flow);
      agrees(index, "pressure", chunk.pressure[index], point.pressure);
      agrees(index, "suction", chunk.suction[index], prediction.suction);
      agrees(index, "windingTemperature", chunk.windingTemperature[index], point.windingTemperature);
      agrees(index, "packCurrent", chunk.packCurrent[index], point.packCurrent);
      expect((chunk.flags[index] & FLAG.extrapolated) !== 0).toBe(point.extrapolated);
    }
    expect(standing).toBeGreaterThan(0);
    expect(refused).toBeGreaterThan(0);
    expect(standing + refused).toBeLessThan(CHECKED / 4);
  });
});

const JOINT = { name: "joint", depth: 4e-4, width: 3e-3, met: "either" } as const;

function givingQuestion(verticalStiffness: number, gapLoad: number | null = null): Problem {
  const { fixed, wants, ...rest } = mixedQuestion(7);
  return {
    ...rest,
    fixed: { ...fixed, vehicle: { ...fixed.vehicle, verticalStiffness, gapLoad } },
    skirts: rest.skirts.map((skirt) => ({
      ...skirt,
      pullFactor: 0.93,
      joints: { span: skirt.perimeter / 4, joints: [JOINT] },
    })),
    wants: { ...wants, leastCrossing: 1 },
  };
}

describe.each([
  ["soft", givingQuestion(12_000)],
  ["stiff", givingQuestion(60_000)],
  ["set under another load", givingQuestion(20_000, 1.5)],
])(
  "combinations whose running gear gives, %s, against the prediction of each as a build",
  (_name, giving) => {
    const ready = prepare(giving);

    it("have its margins to 1e-9, on the surface and over a joint either way", () => {
      let judged = 0;
      for (const index of indices.slice(0, 40)) {
        const input = ductedInput(giving, placesOf(ready.radix, index));
        const prediction = answered(input);
        if (!prediction?.point) continue;
        judged += 1;
        const one = solveChunk(ready, index, index + 1);
        for (const mode of ["parked", "driving"] as const) {
          const expected = leastOf(prediction, giving, mode);
          if (Math.abs(one[mode][0] / expected - 1) > 1e-9)
            expect.fail(`set ${index}: ${mode} ${one[mode][0]} against ${expected}`);
        }
        const span = input.skirt.perimeter / 4;
        const over = (["along", "across"] as const).map((way) => {
          const built = { ...input, skirt: skirtOver(input.skirt, JOINT, way, span) };
          const there = answered(built);
          return there ? Math.min(leastOf(there, giving, "parked"), leastOf(there, giving, "driving")) : 0;
        });
        agreesTo(1e-9, index, "crossing", one.crossing[0], Math.min(...over));
      }
      expect(judged).toBeGreaterThan(20);
    });
  },
);

describe.each([3, 5, 8])(
  "random combinations of propellers, motors, packs and throttles (seed %i), against the prediction of each as a build",
  (seed) => {
    const open = openQuestion(seed);
    const ready = prepare(open);
    const chunk = solveChunk(ready, 0, ready.count);
    const draw = createRandom(seed + 100);

    it("have its speed, thrust, margins, winding and current to 1e-9", () => {
      let [solved, scanned] = [0, 0];
      for (let i = 0; i < CHECKED; i++) {
        const index = Math.floor(draw.uniform() * ready.count);
        const prediction = orRefused(() =>
          predictPropeller(openInput(open, placesOf(ready.radix, index)), [90, 153]),
        );
        if (!prediction) {
          expect(chunk.flags[index] & FLAG.unsolved).toBe(FLAG.unsolved);
          continue;
        }
        const { point } = prediction;
        expect(point === null).toBe((chunk.flags[index] & FLAG.noPoint) !== 0);
        if (!point) continue;
        solved += 1;
        if (chunk.flags[index] & FLAG.scanned) scanned += 1;
        agreesTo(OPEN_AGREED, index, "parked", chunk.parked[index], leastOf(prediction, open, "parked"));
        agreesTo(OPEN_AGREED, index, "driving", chunk.driving[index], leastOf(prediction, open, "driving"));
        agreesTo(OPEN_AGREED, index, "speed", chunk.speed[index], point.speed);
        agreesTo(OPEN_AGREED, index, "thrust", chunk.suction[index], prediction.suction);
        agreesTo(OPEN_AGREED, index, "winding", chunk.windingTemperature[index], point.windingTemperature);
        agreesTo(OPEN_AGREED, index, "current", chunk.packCurrent[index], point.packCurrent);
        expect((chunk.flags[index] & FLAG.extrapolated) !== 0).toBe(point.extrapolated);
        expect(chunk.flow[index]).toBeNaN();
        expect(chunk.pressure[index]).toBeNaN();
      }
      expect(solved).toBeGreaterThan(CHECKED / 2);
      expect(scanned).toBeLessThan(CHECKED / 5);
    });

    it("are the same wherever a chunk begins", () => {
      const [from, to] = [1300, 2700];
      const part = solveChunk(ready, from, to);
      for (const name of ["speed", "suction", "driving", "packCurrent"] as const)
        expect(part[name]).toEqual(chunk[name].slice(from, to));
    });
  },
);
