import { describe, expect, it } from "vitest";
import { crossedJoints } from "#shared/decide/joints/crossed.ts";
import { DEEPEST, deepestJoint } from "#shared/decide/joints/deepest.ts";
import { sampledWithJoints } from "#shared/decide/joints/sampled.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { chanceOf } from "#shared/decide/verdict/judge.ts";
import { skirtOver } from "#shared/physics/joints.ts";
import { predict } from "#shared/physics/predict.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const CRAWLER = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 4, cellResistance: 0.02, wireResistance: 0.02 },
};
const ANGLES = [90, 180];
const joint = (depth: number, width: number) => ({
  name: `the ${depth} m joint`,
  depth,
  width,
  met: "either" as const,
});
const marginOver = (way: "along" | "across", depth: number, width: number, angle: number) => {
  const over = { ...CRAWLER, skirt: skirtOver(CRAWLER.skirt, { depth, width, met: way }, way, 0.09) };
  return predict(over, [angle]).attitudes[0].driving.margin ?? Number.NaN;
};

describe("joints that a build crosses", () => {
  const under = { joints: [joint(2e-4, 0.01), joint(1e-3, 0.003), joint(1e-3, 0.4)], span: 0.09 };

  it("stand by falling hardship, each in its worse way", () => {
    const crossed = crossedJoints(CRAWLER, under, ANGLES);
    expect(crossed.map(({ joint: { width }, way }) => [width, way])).toEqual([
      [0.4, "across"],
      [0.003, "along"],
      [0.01, "along"],
    ]);
  });

  it("have the margins of a prediction over them", () => {
    const [{ way, prediction }] = crossedJoints(CRAWLER, under, ANGLES);
    expect(prediction.attitudes[0].driving.margin).toBe(marginOver(way, 1e-3, 0.4, 90));
  });
});

describe("the deepest joint that is crossed", () => {
  const asked = { attitude: 90, mode: "driving", margin: 1.4 } as const;

  it.each(["along", "across"] as const)("met %s leaves just the margin wanted", (way) => {
    const { state, depth } = deepestJoint(CRAWLER, { span: 0.09, width: 0.03 }, { ...asked, way });
    expect(state).toBe("up-to");
    expect(depth).toBeLessThan(DEEPEST);
    expect(marginOver(way, depth ?? Number.NaN, 0.03, 90)).toBeCloseToRelative(1.4, 1e-8);
  });

  it("is none where the margin isn't there beside it, and any where nothing more leaks", () => {
    const at = (margin: number, width: number) =>
      deepestJoint(CRAWLER, { span: 0.09, width }, { ...asked, margin, way: "across" }).state;
    expect(at(1e3, 0.03)).toBe("none");
    expect(at(1, 0)).toBe("any");
  });

  it("refuses a margin of 0", () => {
    const place = { span: 0.09, width: 0.03 };
    expectOutOfRange(() => deepestJoint(CRAWLER, place, { ...asked, margin: 0, way: "along" }), "margin");
  });
});

describe("the chance of holding over a joint", () => {
  const under = { joints: [joint(4e-4, 0.01)], span: 0.09 };
  const asked = { uncertainty: { "skirt.gap": 1e-4 }, samples: 256, angles: ANGLES };

  it("is that of the same samples with the lip over it, and the least decides", () => {
    const sampled = sampledWithJoints({ build: CRAWLER, joints: under }, asked);
    const [{ build, prediction }] = crossedJoints(CRAWLER, under, []);
    const { parked, driving } = prediction.worst;
    const alone = uncertaintyOf(build, { ...asked, angles: [...ANGLES, parked.angle, driving.angle] });
    expect(sampled.over?.attitudes).toEqual(alone.attitudes.slice(0, 2));
    expect(sampled.over?.worst.driving).toEqual(alone.attitudes[3]);
    const chance = chanceOf(sampled, [{ name: "the wall", angle: 90 }]);
    expect(chance?.margin5).toBe(sampled.over?.worst.driving.driving.p5);
    expect(chance?.name).toMatch(/ over the 0.0004 m joint$/);
  });

  it("without a joint is today's", () => {
    const sampled = sampledWithJoints({ build: CRAWLER, joints: null }, asked);
    expect(sampled).toEqual({ ...uncertaintyOf(CRAWLER, asked), over: null });
  });
});
