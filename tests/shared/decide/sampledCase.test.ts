import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledCase } from "#shared/decide/sampledCase.ts";
import { emptyPoint, pointLaw } from "#shared/decide/sampledPoint.ts";
import { assemble } from "#shared/physics/assembly.ts";
import { operatingPoint, operatingPoints } from "#shared/physics/operatingPoint.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { suctionByGap } from "#shared/physics/pullByGap.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const pack = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 3.8,
  cellResistance: 0.026,
  wireResistance: 0.014,
};
const base: PredictInput = { ...PANE_CRAWLER, pack };
const { motor, rotor, skirt, vehicle } = base;
const warm = { ...motor, thermalResistance: 8 };
const leaky = { coefficient: 1.7e-4, exponent: 0.55, density: 1.2, viscosity: 1.81e-5 };
const sizeCorrection = { testedDiameter: 0.038, testedTipSpeed: 60, applied: 0.8 };

const BUILDS: readonly (readonly [string, PredictInput])[] = [
  ["a cold winding", base],
  ["a warm winding", { ...base, motor: warm }],
  ["a winding at a given temperature", { ...base, motor: { ...warm, windingTemperature: 350 } }],
  ["a measured leak", { ...base, motor: warm, skirt: { ...skirt, measuredLeak: leaky } }],
  ["a size correction", { ...base, motor: warm, rotor: { ...rotor, sizeCorrection } }],
  ["openings beside the lip", { ...base, skirt: { ...skirt, openings: [{ area: 2e-5 }] } }],
  [
    "a joint under the lip",
    { ...base, motor: warm, skirt: { ...skirt, joint: { span: 0.06, depth: 8e-4 } } },
  ],
  [
    "a jet and a pull factor",
    { ...base, vehicle: { ...vehicle, jetArea: 4e-4, jetAngle: 30, pullFactor: 0.9 } },
  ],
];

const open = (input: PredictInput) => {
  const { machine, leak } = assemble(input);
  const point = operatingPoint(operatingPoints(machine, leak));
  if (!point) return expect.fail("no point");
  return { fast: sampledCase(input, point, machine.phiEnd), point };
};

/** Overwrites what a sample moves. */
function overwrite(copy: PredictInput, from: PredictInput, moved: readonly number[]): void {
  const [volts, gap, psi, density, resistance, jot] = moved;
  Object.assign(copy.pack, { openCircuitVoltage: from.pack.openCircuitVoltage * volts });
  Object.assign(copy.skirt, { gap: from.skirt.gap * (1 + 3 * (gap - 1)) });
  Object.assign(copy.rotor, { psi: from.rotor.psi.map((c) => c * psi) });
  Object.assign(copy.air, { pressure: from.air.pressure * density });
  Object.assign(copy.motor, { resistance: from.motor.resistance * resistance });
  Object.assign(copy.vehicle, { pullFactor: (from.vehicle.pullFactor ?? 1) * jot });
}

const shift = fc.double({ min: 0.9, max: 1.1, noNaN: true });
const six = fc.tuple(shift, shift, shift, shift, shift, shift);

describe("a sample by the fast solvers", () => {
  it.each(BUILDS)("with %s, its numbers overwritten: the prediction's pull, flow and suction", (_, build) => {
    const copy = structuredClone(build);
    const { fast } = open(copy);
    fc.assert(
      fc.property(six, (moved) => {
        overwrite(copy, build, moved);
        const { point, suction } = predict(copy, []);
        const solved = fast?.solved();
        expect(solved?.suction).toBeCloseToRelative(suction, 1e-11);
        expect(solved?.flow).toBeCloseToRelative(point?.flow ?? Number.NaN, 1e-11);
        expect(solved?.pressure).toBeCloseToRelative(point?.pressure ?? Number.NaN, 1e-11);
      }),
      { numRuns: 40 },
    );
  });

  it.each(BUILDS)("with %s: the general solver's pull at every other gap, closed included", (_, build) => {
    const copy = structuredClone(build);
    const { fast } = open(copy);
    fc.assert(
      fc.property(six, fc.array(fc.double({ min: 0.01, max: 1.6, noNaN: true })), (moved, shares) => {
        overwrite(copy, build, moved);
        fast?.solved();
        const assembly = assemble(copy);
        const general = suctionByGap(
          copy,
          assembly,
          operatingPoint(operatingPoints(assembly.machine, assembly.leak)),
        );
        for (const share of [0, ...shares]) {
          const gap = share * copy.skirt.gap;
          const quick = fast?.at(gap) ?? Number.NaN;
          if (!Number.isNaN(quick)) expect(quick).toBeCloseToRelative(general(gap), 1e-9);
          if (share > 0.3) expect(quick).not.toBeNaN();
        }
      }),
      { numRuns: 20 },
    );
  });

  it("leaves drilled holes, a curve of degree 5 and a skirt that opens or closes to the general solver", () => {
    const holes = [{ count: 2, diameter: 3e-3, thickness: 2e-3 }];
    expect(open({ ...base, skirt: { ...skirt, holes } }).fast).toBeNull();
    expect(open({ ...base, rotor: { ...rotor, psi: [...rotor.psi, 0, 0, 1e-3] } }).fast).toBeNull();
    const copy = structuredClone({ ...base, skirt: { ...skirt, openings: [{ area: 2e-5 }], roughness: 0 } });
    const { fast } = open(copy);
    expect(fast?.solved()).not.toBeNull();
    Object.assign(copy.skirt, { gap: 0 });
    expect(fast?.solved()).toBeNull();
  });

  it("of a motor that stands still in a sample: none, and its law says that nothing pulls", () => {
    const copy = structuredClone(base);
    const { fast } = open(copy);
    const law = pointLaw(copy);
    Object.assign(copy.motor, { frictionTorque: 1 });
    expect(fast?.solved()).toBeNull();
    const into = emptyPoint();
    law(into);
    expect(into.suction).toBe(0);
  });

  it("whose numbers can't be: refused as the prediction refuses them", () => {
    const copy = structuredClone(base);
    const law = pointLaw(copy);
    Object.assign(copy.vehicle, { pullFactor: -1 });
    expect(() => law(emptyPoint())).toThrow("pullFactor");
    expect(() => predict(copy, [])).toThrow("pullFactor");
  });
});
