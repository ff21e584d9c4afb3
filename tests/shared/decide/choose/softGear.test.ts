import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import type { SkirtInput } from "#shared/physics/skirt.ts";
import { motor, pack, question, rotor, skirt } from "./questions.ts";

/** Flat valleys and kinks leave the two ways of looking for a least this far apart, relative: the square of a solver's tolerance, amplified. */
const APART = 5e-9;
const WANTED = [
  { angle: 90, mode: "parked" },
  { angle: 180, mode: "driving" },
  { angle: "worst", mode: "parked" },
  { angle: "worst", mode: "driving" },
] as const;

/** One combination on running gear that gives, asked of the search and of the prediction. */
function asked(verticalStiffness: number, gap: number, series: number, change: Partial<SkirtInput>) {
  const plain = question({
    motors: [motor("m")],
    rotors: [rotor("r", { sizes: [{ diameter: 0.044, mass: 0.012, burstSpeed: null }] })],
    packs: [pack("p", series)],
    skirts: [skirt("s", { openings: [], roughness: 0, ...change, gaps: [gap] })],
    duties: [0.9],
  });
  const { fixed, motors, rotors, packs, skirts } = plain;
  const vehicle = { ...fixed.vehicle, verticalStiffness };
  const problem = {
    ...plain,
    fixed: { ...fixed, vehicle },
    wants: { ...plain.wants, attitudes: WANTED },
  };
  const prepared = prepare(problem);
  const chunk = solveChunk(prepared, 0, 1);
  const [{ cell, ...ofPack }] = packs;
  const { id: _id, sizes, basis: _b, testedDiameters: _d, testedTipSpeeds: _s, ...curve } = rotors[0];
  const [{ share, wheelFriction, skirtFriction, pullFactor }] = skirts;
  const input: PredictInput = {
    air: fixed.air,
    rotor: { ...curve, diameter: sizes[0].diameter },
    motor: motors[0],
    pack: { ...ofPack, cellResistance: cell.resistance, openCircuitVoltage: prepared.packs[0].voltage },
    supply: { ...fixed.supply, duty: 0.9 },
    skirt: prepared.fittedSkirts[0].skirt,
    vehicle: {
      ...vehicle,
      mass: fixed.vehicle.mass + motors[0].mass + sizes[0].mass + packs[0].mass + skirts[0].mass,
      wheelFriction,
      skirtFriction,
      skirtShare: share,
      pullFactor,
    },
  };
  return { chunk, input };
}

const SKIRTS: readonly (readonly [string, (share: number) => Partial<SkirtInput>])[] = [
  ["a lip gap", () => ({})],
  [
    "a measured leak",
    (share) => ({
      measuredLeak: { coefficient: 6e-5, exponent: 0.5 + 0.4 * share, density: 1.19, viscosity: 1.82e-5 },
    }),
  ],
  ["a joint under the lip", (share) => ({ joint: { span: 0.07, depth: 6e-4 * share } })],
];

describe("a combination on gear from very soft to stiff, its gap nearly closed or wide open at some limit", () => {
  const share = fc.double({ min: 0.01, max: 1, noNaN: true });
  it.each(SKIRTS)(
    "with %s: the search's least margins are the prediction's, none is missed",
    (_, skirtOf) => {
      fc.assert(
        fc.property(share, share, share, fc.integer({ min: 1, max: 3 }), (soft, wide, leak, series) => {
          const { chunk, input } = asked(10 ** (2.3 + 2.5 * soft), 1e-4 + 9e-4 * wide, series, skirtOf(leak));
          const { attitudes, worst } = predict(input, [90, 180]);
          const parked = Math.min(worst.parked.margin ?? Infinity, attitudes[0].parked.margin ?? Infinity);
          const driving = Math.min(worst.driving.margin ?? Infinity, attitudes[1].driving.margin ?? Infinity);
          expect(chunk.parked[0]).toBeCloseToRelative(parked, APART);
          expect(chunk.driving[0]).toBeCloseToRelative(driving, APART);
        }),
        { numRuns: 40 },
      );
    },
  );

  // Lift-off takes no load on any attitude, so its margin falls as 1/|cos θ| up to the ceiling.
  it("whose stand-in has its least far from the ceiling: worst on the ceiling all the same", () => {
    const leak = { coefficient: 6e-5, exponent: 0.8853, density: 1.19, viscosity: 1.82e-5 };
    const { input } = asked(5662.8, 6.5216e-4, 2, { measuredLeak: leak });
    const { attitudes, worst } = predict(input, [180]);
    expect(worst.parked.margin).toBeLessThanOrEqual((attitudes[0].parked.margin ?? 0) * (1 + 1e-12));
    expect(worst.parked.angle).toBeCloseToRelative(180, 1e-6);
  });
});
