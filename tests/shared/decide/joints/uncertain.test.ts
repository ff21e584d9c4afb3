import { describe, expect, it } from "vitest";
import { crossedJoints, type JointsUnder } from "#shared/decide/joints/crossed.ts";
import { sampledWithJoints } from "#shared/decide/joints/sampled.ts";
import { jointCause, uncertainOver } from "#shared/decide/joints/uncertain.ts";
import { type StatedUncertainty, uncertaintyOf } from "#shared/decide/uncertainty.ts";
import type { JointWay } from "#shared/physics/joints.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const CRAWLER: PredictInput = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 4, cellResistance: 0.02, wireResistance: 0.02 },
};
const [DEPTH, WIDTH] = [6e-4, 0.05];
const NOTHING: StatedUncertainty = { uncertainty: {}, samples: 4096, angles: [180] };
/** Standard deviations between the 5 % and the 95 % quantile of a normal distribution. */
const BAND = 2 * 1.6448536269514722;

function under(met: JointWay, uncertain?: { depth: number; width: number }): JointsUnder {
  return { joints: [{ name: "the bar", depth: DEPTH, width: WIDTH, met, uncertain }], span: 0.09 };
}
const over = (met: JointWay, uncertain?: { depth: number; width: number }, build = CRAWLER) => {
  const [hardest] = crossedJoints(build, under(met, uncertain), [180]);
  return hardest;
};
const marginAt = (met: JointWay, depth: number, width: number, build = CRAWLER) => {
  const joints = { joints: [{ name: "the bar", depth, width, met }], span: 0.09 };
  return crossedJoints(build, joints, [180])[0].prediction.attitudes[0].driving.margin ?? Number.NaN;
};
const widthOf = (build: PredictInput, asked: StatedUncertainty) => {
  const { p5, p95 } = uncertaintyOf(build, asked).attitudes[0].driving;
  return (p95 ?? Number.NaN) - (p5 ?? Number.NaN);
};

describe("the uncertainty of a joint's sizes", () => {
  const small = { depth: 0.02 * DEPTH, width: 0.02 * WIDTH };

  it.each([
    ["along", "depth"],
    ["across", "depth"],
    ["across", "width"],
  ] as const)(
    "met %s, of its %s: the band is 3.29 u·dm/dx, by differences of the prediction",
    (met, size) => {
      const only = { depth: 0, width: 0, [size]: small[size] };
      const crossed = over(met, only);
      const asked = uncertainOver(crossed, NOTHING);
      expect(asked.shared?.map(({ name }) => name)).toEqual([jointCause({ name: "the bar" }, size)]);
      const at = (by: number) =>
        marginAt(met, DEPTH + (size === "depth" ? by : 0), WIDTH + (size === "width" ? by : 0));
      const slope = (at(small[size]) - at(-small[size])) / (2 * small[size]);
      expect(widthOf(crossed.build, asked)).toBeCloseToRelative(BAND * small[size] * Math.abs(slope), 0.03);
    },
  );

  it("met along, of its width: says nothing", () => {
    expect(uncertainOver(over("along", { depth: 0, width: 0.01 }), NOTHING)).toEqual(NOTHING);
  });

  it("of none, or of a joint without any opening: today's, to the last digit", () => {
    for (const met of ["along", "across"] as const) {
      const crossed = over(met);
      expect(uncertainOver(crossed, NOTHING)).toEqual(NOTHING);
      expect(uncertainOver(over(met, { depth: 0, width: 0 }), NOTHING)).toEqual(NOTHING);
    }
    const flat = crossedJoints(
      CRAWLER,
      { joints: [{ name: "paint", depth: 0, width: 0.02, met: "either", uncertain: small }], span: 0.09 },
      [180],
    )[0];
    expect(uncertainOver(flat, NOTHING)).toEqual(NOTHING);
  });

  it("stands beside what is uncertain already, and has its share in the variance over the joint", () => {
    const asked = { ...NOTHING, uncertainty: { "skirt.gap": 2e-5 }, samples: 1024 };
    const joints = under("along", { depth: 1e-4, width: 0 });
    const sampled = sampledWithJoints({ build: CRAWLER, joints }, asked);
    expect(sampled.shares.map(({ path }) => path)).toEqual(["skirt.gap"]);
    const shares = sampled.over?.shares ?? [];
    expect(shares.map(({ path }) => path).sort()).toEqual(["depth of the bar", "skirt.gap"]);
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeGreaterThan(0.97);
    const certain = sampledWithJoints({ build: CRAWLER, joints: under("along") }, asked);
    const width = (of: typeof sampled) => {
      const { p5, p95 } = of.over?.attitudes[0].driving ?? { p5: null, p95: null };
      return (p95 ?? Number.NaN) - (p5 ?? Number.NaN);
    };
    expect(width(sampled)).toBeGreaterThan(1.1 * width(certain));
    expect(sampled.attitudes).toEqual(certain.attitudes);
  });
});

describe("the lip's law over a joint beside a measured leak", () => {
  const leak = { coefficient: 2.2e-4, exponent: 0.52, density: 1.2, viscosity: 1.81e-5 };
  const measured: PredictInput = {
    ...CRAWLER,
    skirt: { ...CRAWLER.skirt, lossSum: 1.5, landFriction: 1, measuredLeak: leak },
  };

  it("is as unsure as anywhere, along it alone", () => {
    const along = uncertainOver(over("along", undefined, measured), NOTHING, 0.15);
    expect(along.uncertainty).toEqual({ "skirt.lossSum": 0.15 * 1.5, "skirt.landFriction": 0.15 });
    expect(widthOf(over("along", undefined, measured).build, along)).toBeGreaterThan(0);
    expect(uncertainOver(over("across", undefined, measured), NOTHING, 0.15)).toEqual(NOTHING);
    expect(uncertainOver(over("along"), NOTHING, 0.15)).toEqual(NOTHING);
  });

  it("that the build states itself stays as stated", () => {
    const stated = { ...NOTHING, uncertainty: { "skirt.lossSum": 0.01 } };
    const { uncertainty } = uncertainOver(over("along", undefined, measured), stated, 0.15);
    expect(uncertainty["skirt.lossSum"]).toBe(0.01);
  });

  it("moves the margin over the joint as the prediction does", () => {
    const { build } = over("along", undefined, measured);
    const at = (lossSum: number) =>
      predict({ ...build, skirt: { ...build.skirt, lossSum } }, [180]).attitudes[0].driving.margin ?? 0;
    expect(at(1.8)).toBeGreaterThan(at(1.2));
  });
});
