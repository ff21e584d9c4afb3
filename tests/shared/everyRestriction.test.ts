import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { emptyPoint, pointLaw } from "#shared/decide/sampledPoint.ts";
import { flowLaw } from "#shared/fit/calibration/forces.ts";
import { solvedSuctions } from "#shared/fit/calibration/suctions.ts";
import { suctionsOver } from "#shared/fit/calibration/suctionsOver.ts";
import { gapHeightsFromLeak } from "#shared/fit/gapHeight.ts";
import { airFrom } from "#shared/physics/air.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { leakFlow } from "#shared/physics/restriction/leak.ts";
import type { RestrictionKind } from "#shared/physics/restriction/restriction.ts";
import { type SkirtInput, skirtLeak } from "#shared/physics/skirt.ts";
import { workingsOf } from "#shared/physics/workings.ts";
import { motor, pack, question, rotor, skirt } from "./decide/choose/questions.ts";

/** The change of a skirt that makes a restriction of each kind. A new kind joins here: the compiler asks for it. */
const MADE_BY: { readonly [K in RestrictionKind]: Partial<SkirtInput> } = {
  lipGap: {},
  joint: { joint: { span: 0.07, depth: 6e-4 } },
  measuredLeak: {
    measuredLeak: { coefficient: 6e-5, exponent: 0.62, density: 1.19, viscosity: 1.82e-5 },
  },
  opening: { openings: [{ area: 9e-6, dischargeCoefficient: 0.61 }] },
  holes: { holes: [{ count: 2, diameter: 3e-3, thickness: 2e-3 }] },
  honeycomb: { honeycombs: [{ count: 40, diameter: 1.2e-3, length: 8e-3 }] },
};
const KINDS = Object.keys(MADE_BY) as RestrictionKind[];

/** The same build asked of the search and of the prediction. */
function asked(change: Partial<SkirtInput>, gap: number, series: number) {
  const problem = question({
    motors: [motor("m")],
    rotors: [rotor("r", { sizes: [{ diameter: 0.044, mass: 0.012, burstSpeed: null }] })],
    packs: [pack("p", series)],
    skirts: [skirt("s", { ...change, pullFactor: 0.9, gaps: [gap] })],
    duties: [0.9],
  });
  const prepared = prepare(problem);
  const chunk = solveChunk(prepared, 0, 1);
  const { fixed, motors, rotors, packs } = problem;
  const [{ cell, ...ofPack }] = packs;
  const { id: _id, sizes, basis: _b, testedDiameters: _d, testedTipSpeeds: _s, ...curve } = rotors[0];
  const input: PredictInput = {
    air: fixed.air,
    rotor: { ...curve, diameter: sizes[0].diameter },
    motor: motors[0],
    pack: { ...ofPack, cellResistance: cell.resistance, openCircuitVoltage: 4.18 },
    supply: { ...fixed.supply, duty: 0.9 },
    skirt: prepared.fittedSkirts[0].skirt,
    vehicle: {
      ...fixed.vehicle,
      mass: fixed.vehicle.mass + 0.04 + 0.012 + 0.046 * series + 0.03,
      wheelFriction: 0.7,
      skirtFriction: 0.3,
      skirtShare: 0.1,
      pullFactor: 0.9,
    },
  };
  return { input, chunk };
}

describe("a skirt with every kind of restriction", () => {
  it.each(KINDS)(
    "%s: search, sampling, calibration and working have the prediction's flow and pull",
    (kind) => {
      fc.assert(
        fc.property(
          fc.subarray(KINDS),
          fc.double({ min: 1e-4, max: 1.2e-3, noNaN: true }),
          fc.integer({ min: 1, max: 3 }),
          (others, gap, series) => {
            const beside = kind === "lipGap" ? others.filter((other) => other !== "measuredLeak") : others;
            const change = Object.assign({}, MADE_BY[kind], ...beside.map((other) => MADE_BY[other]));
            const { input, chunk } = asked(change, gap, series);
            const prediction = predict(input, [90, 153]);
            const { point, suction } = prediction;
            if (!point) return expect.fail("no point");
            expect(skirtLeak(input.skirt, airFrom(input.air)).map((each) => each.kind)).toContain(kind);
            expect(chunk.flow[0]).toBeCloseToRelative(point.flow, 1e-11);
            expect(chunk.pressure[0]).toBeCloseToRelative(point.pressure, 1e-11);
            expect(chunk.suction[0]).toBeCloseToRelative(suction, 1e-11);

            const sample = emptyPoint();
            pointLaw(input)(sample);
            expect(sample.suction).toBeCloseToRelative(suction, 1e-11);

            const gaps = [0.4, 0.6, 0.8, 0.9, 1].map((share) => share * gap);
            expect(solvedSuctions(input, gaps)[4]).toBeCloseToRelative(suction, 1e-11);
            expect(suctionsOver(input, gaps)[4]).toBeCloseToRelative(suction, 1e-7);

            const workings = workingsOf(input, prediction, [90]);
            const through = workings.findLast(({ result }) => result.symbol === "Q");
            expect(through?.result.value).toBeCloseToRelative(point.flow, 1e-11);
            expect(workings.find(({ title }) => title === "pull")?.result.value).toBe(suction);
          },
        ),
        { numRuns: 25 },
      );
    },
  );

  it.each(KINDS)("%s: a leak reading of it tells the gap that it was made with", (kind) => {
    const { input } = asked({ ...MADE_BY[kind], measuredLeak: null, roughness: 0 }, 4e-4, 2);
    const air = airFrom(input.air);
    const flow = leakFlow(skirtLeak(input.skirt, air), air, 400);
    const [height] = gapHeightsFromLeak(input.skirt, { points: [{ pressure: 400, flow }], air });
    expect(height).toBeCloseToRelative(4e-4, 1e-10);
    const law = flowLaw({ input: { skirt: input.skirt, air: input.air }, pressure: 400, flow });
    expect(law(4e-4)).toBeCloseToRelative(flow, 1e-12);
  });
});
