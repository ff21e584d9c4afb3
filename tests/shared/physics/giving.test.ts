import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sensitivitiesOf } from "#shared/decide/sensitivities.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { waysToHold } from "#shared/decide/ways/ways.ts";
import { findRoot } from "#shared/numeric/root.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { predictPropeller } from "#shared/physics/propeller.ts";
import { EDGE_LOSS } from "#shared/physics/restriction/lipGap.ts";
import { type RundownInput, runDown } from "#shared/physics/rundown.ts";
import { skirtAtGap } from "#shared/physics/skirt.ts";
import { workingsOf } from "#shared/physics/workings.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const G = 9.80665;
const CRAWLER: PredictInput = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 4, cellResistance: 0.02, wireResistance: 0.02 },
};
const riding = (verticalStiffness: number | null, more: Partial<PredictInput["vehicle"]> = {}) => ({
  ...CRAWLER,
  vehicle: { ...CRAWLER.vehicle, verticalStiffness, ...more },
});
const MEASURED = { coefficient: 1.2e-4, exponent: 0.6, density: 1.2, viscosity: 1.81e-5 };

/** The pull of a rigid build with its lip at another stand-off: what the giving one must have under its load. */
const pullAt = (input: PredictInput, gap: number) =>
  predict(
    { ...input, skirt: skirtAtGap(input.skirt, gap), vehicle: { ...input.vehicle, verticalStiffness: null } },
    [],
  ).suction;

describe("a prediction whose gap gives, by hand", () => {
  const stiffness = 9000;
  const weight = 0.4 * G;

  it("has each mode's margin at the gap that its own limit leaves", () => {
    const [wall, ceiling] = predict(riding(stiffness), [90, 180]).attitudes;
    const sliding = 6e-4 - (weight / 0.7 - weight) / stiffness;
    expect(wall.gaps?.slide).toBeCloseToRelative(sliding, 1e-12);
    expect(wall.margins.slide).toBeCloseToRelative((pullAt(CRAWLER, sliding) * 0.7) / weight, 1e-9);
    const open = 6e-4 + weight / stiffness;
    expect(ceiling.gaps?.liftOff).toBeCloseToRelative(open, 1e-12);
    expect(ceiling.margins.liftOff).toBeCloseToRelative(pullAt(CRAWLER, open) / weight, 1e-9);
  });

  it("set under another load stands otherwise: the whole pull's load less", () => {
    const [{ gaps }] = predict(riding(stiffness, { gapLoad: 10 }), [180]).attitudes;
    expect(gaps?.liftOff).toBeCloseToRelative(6e-4 + 10 / stiffness, 1e-12);
  });

  it("of soft springs says where the skirt touches, and of stiff ones nothing", () => {
    const codes = (k: number) => predict(riding(k, { cgHeight: 0 })).warnings.map(({ code }) => code);
    expect(codes(1500)).toContain("skirt-touches");
    expect(codes(90_000)).not.toContain("skirt-touches");
  });

  it("with a measured leak moves it by (h/h₀)^(4x−1)", () => {
    const input = { ...CRAWLER, skirt: { ...CRAWLER.skirt, measuredLeak: MEASURED } };
    const moved = skirtAtGap(input.skirt, 9e-4).measuredLeak;
    expect(moved?.coefficient).toBeCloseToRelative(1.2e-4 * 1.5 ** 1.4, 1e-12);
    expect(moved?.exponent).toBe(0.6);
    expect(skirtAtGap(input.skirt, 0).measuredLeak).toBeNull();
    const closed = { ...input.skirt, gap: 0 };
    expect(skirtAtGap(closed, 1e-4).measuredLeak).toEqual(MEASURED);
  });
});

describe("the limits of a prediction whose gap gives", () => {
  const inputs = fc.record({
    gap: fc.double({ min: 1e-4, max: 1.2e-3, noNaN: true }),
    mass: fc.double({ min: 0.1, max: 0.7, noNaN: true }),
    wheelFriction: fc.double({ min: 0.3, max: 1.2, noNaN: true }),
    skirtShare: fc.double({ min: 0, max: 0.4, noNaN: true }),
    measured: fc.boolean(),
    warm: fc.boolean(),
  });
  interface Given {
    readonly gap: number;
    readonly mass: number;
    readonly wheelFriction: number;
    readonly skirtShare: number;
    readonly measured: boolean;
    readonly warm: boolean;
  }
  const made = ({ gap, mass, wheelFriction, skirtShare, measured, warm }: Given): PredictInput => ({
    ...CRAWLER,
    motor: { ...CRAWLER.motor, thermalResistance: warm ? 8 : null },
    skirt: { ...CRAWLER.skirt, gap, measuredLeak: measured ? MEASURED : null },
    vehicle: { ...CRAWLER.vehicle, mass, wheelFriction, skirtShare },
  });

  it("without a stiffness, with κ = 1, a joint of no depth and the lip's own law spelled out is today's, every figure", () => {
    fc.assert(
      fc.property(inputs, (given) => {
        const plain = made(given);
        const spelled = {
          ...plain,
          skirt: {
            ...plain.skirt,
            joint: { span: 0.1, depth: 0 },
            holes: [],
            honeycombs: [],
            landFriction: 1,
            lossSum: EDGE_LOSS[plain.skirt.edge ?? "square"],
          },
          vehicle: { ...plain.vehicle, pullFactor: 1, verticalStiffness: null, gapLoad: null },
        };
        expect(predict(spelled, [0, 90, 153])).toEqual(predict(plain, [0, 90, 153]));
      }),
      { numRuns: 30 },
    );
  });

  it("of a spring without end is today's to 1e-12", () => {
    fc.assert(
      fc.property(inputs, (given) => {
        const plain = made(given);
        const rigid = predict(plain, [0, 90, 153, 180]);
        const stiff = predict(
          { ...plain, vehicle: { ...plain.vehicle, verticalStiffness: 1e30 } },
          [0, 90, 153, 180],
        );
        expect(stiff.point).toEqual(rigid.point);
        rigid.attitudes.forEach(({ margins }, i) => {
          for (const mode of ["liftOff", "slide", "tip", "climb"] as const) {
            const margin = stiff.attitudes[i].margins[mode];
            if (margins[mode] === null) expect(margin).toBeNull();
            else expect(margin).toBeCloseToRelative(margins[mode], 1e-12);
          }
        });
        for (const state of ["parked", "driving"] as const)
          expect(stiff.worst[state].margin).toBeCloseToRelative(rigid.worst[state].margin ?? 0, 1e-10);
      }),
      { numRuns: 30 },
    );
  });
});

describe("what is asked of a build whose gap gives agrees with its prediction", () => {
  const build = riding(9000);
  const { worst, attitudes } = predict(build, [90]);

  it("in its sensitivities and ways, on a wall and on the worst attitude", () => {
    for (const mode of ["parked", "driving"] as const) {
      const onWall = sensitivitiesOf(build, { attitude: 90, mode });
      expect(onWall.margin).toBeCloseToRelative(attitudes[0][mode].margin ?? 0, 1e-12);
      const asked = { attitude: "worst", mode, targetMargin: 1.5 } as const;
      expect(waysToHold({ build, cell: null }, asked).margin).toBeCloseToRelative(
        worst[mode].margin ?? 0,
        1e-12,
      );
    }
  });

  it("in the sensitivity to the stiffness, by a difference of predictions", () => {
    const { sensitivities } = sensitivitiesOf(build, { attitude: 180, mode: "parked" });
    const told = sensitivities.find(({ path }) => path === "vehicle.verticalStiffness")?.elasticity;
    const margin = (k: number) => predict(riding(k), [180]).attitudes[0].parked.margin ?? 0;
    const slope = Math.log(margin(9000 * 1.001) / margin(9000 / 1.001)) / (2 * Math.log(1.001));
    expect(told).toBeCloseToRelative(slope, 1e-4);
    expect(told).toBeGreaterThan(0);
  });

  it("in its samples: of hardly any uncertainty the median is the margin", () => {
    const { attitudes: sampled } = uncertaintyOf(build, {
      uncertainty: { "vehicle.mass": 1e-9 },
      samples: 128,
    });
    const nominal = predict(
      build,
      sampled.map(({ angle }) => angle),
    ).attitudes;
    sampled.forEach(({ angle, parked, driving }, i) => {
      if (angle === 0) return;
      expect(parked.p50).toBeCloseToRelative(nominal[i].parked.margin ?? 0, 3e-3);
      expect(driving.p50).toBeCloseToRelative(nominal[i].driving.margin ?? 0, 3e-3);
    });
    expect(sampled[3].angle).toBeCloseToRelative(worst.driving.angle, 1e-3);
  });

  // Small independent errors: share ∝ (elasticity·u/x)².
  it("in its samples: stiffness and pull factor share the variance by their elasticities", () => {
    const known = riding(9000, { pullFactor: 1 });
    const { sensitivities } = sensitivitiesOf(known, { attitude: "worst", mode: "driving" });
    const part = (path: string, relative: number) =>
      ((sensitivities.find((each) => each.path === path)?.elasticity ?? 0) * relative) ** 2;
    const [stiffness, factor] = [part("vehicle.verticalStiffness", 0.02), part("vehicle.pullFactor", 0.02)];
    const { shares } = uncertaintyOf(known, {
      uncertainty: { "vehicle.verticalStiffness": 180, "vehicle.pullFactor": 0.02 },
    });
    const share = shares.find(({ path }) => path === "vehicle.verticalStiffness")?.share;
    expect(share).toBeCloseToRelative(stiffness / (stiffness + factor), 0.05);
  });

  it("in its run: at the start as predicted, and it ends with the margin of that moment", () => {
    const curve: [number, number][] = [
      [0, 3],
      [0.1, 3.5],
      [1, 4],
    ];
    const cell = { capacity: 900, minimumVoltage: 3, resistance: 0.02, curve };
    const input: RundownInput = {
      ...build,
      pack: { series: 2, parallel: 1, wireResistance: 0.02, cell },
      angles: [90, 180],
      targetMargin: 1.6,
    };
    const run = runDown(input);
    const ceiling = run.attitudes[1].target;
    expect(ceiling.state).toBe("falls");
    const at = (openCircuitVoltage: number) =>
      predict({ ...build, pack: { ...CRAWLER.pack, openCircuitVoltage } }, [180]);
    const margin = (voltage: number) => at(voltage).attitudes[0].driving.margin ?? 0;
    expect(margin(4)).toBeGreaterThan(1.6);
    const falls = findRoot((voltage) => margin(voltage) - 1.6, 2.8, 4).root;
    expect(at(falls).point?.packVoltage).toBeCloseToRelative(ceiling.packVoltage ?? 0, 1e-7);
    const rigid = runDown({ ...input, vehicle: CRAWLER.vehicle });
    expect(rigid.attitudes[1].target.packVoltage).not.toBeCloseToRelative(ceiling.packVoltage ?? 0, 1e-3);
  });

  it("in its working: load and gap at the limit stand beside the pull", () => {
    const wall = workingsOf(build, predict(build, [90]), [90]).find(
      ({ title }) => title === "margin at 90°, driving",
    );
    const said = Object.fromEntries((wall?.values ?? []).map(({ symbol, value }) => [symbol, value]));
    expect(wall?.result.value).toBe(attitudes[0].driving.margin);
    expect(said.h).toBeCloseToRelative(attitudes[0].gaps?.climb ?? 0, 1e-12);
    expect(said.F / said.F_needed).toBeCloseToRelative(wall?.result.value ?? 0, 1e-12);
    expect(pullAt(CRAWLER, said.h)).toBeCloseToRelative(said.F, 1e-9);
  });
});

describe("what can't be", () => {
  it.each([
    ["vehicle.verticalStiffness", { verticalStiffness: 0 }],
    ["vehicle.verticalStiffness", { verticalStiffness: -5 }],
    ["vehicle.gapLoad", { verticalStiffness: 9000, gapLoad: -1 }],
    ["vehicle.pullFactor", { pullFactor: 0 }],
  ])("is refused by %s of %o, ducted and with a propeller", (path, change) => {
    const vehicle = { ...CRAWLER.vehicle, ...change };
    expectOutOfRange(() => predict({ ...CRAWLER, vehicle }), path);
    const { skirt: _skirt, ...rest } = CRAWLER;
    expectOutOfRange(() => predictPropeller({ ...rest, rotor: PANE_PROPELLER, vehicle }), path);
  });

  it.each([0.37, -0.01, Number.NaN])("is refused by the span of a joint, %s of 0.36 m", (span) => {
    const skirt = { ...CRAWLER.skirt, joint: { span, depth: 1e-3 } };
    expectOutOfRange(() => predict({ ...CRAWLER, skirt }), "skirt.joint.span");
  });

  it("of a cavity that a propeller lacks changes nothing, and says so", () => {
    const { skirt: _skirt, ...rest } = { ...CRAWLER, rotor: PANE_PROPELLER };
    const stated = { ...CRAWLER.vehicle, pullFactor: 0.9, verticalStiffness: 9000 };
    const plain = predictPropeller(rest);
    const said = predictPropeller({ ...rest, vehicle: stated });
    expect(said.attitudes).toEqual(plain.attitudes);
    expect(said.warnings.filter(({ code }) => code === "no-cavity")).toHaveLength(2);
  });
});
