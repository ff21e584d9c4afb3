import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jointSpan, skirtOver, waysMet } from "#shared/physics/joints.ts";
import { predict } from "#shared/physics/predict.ts";
import { leakFlow } from "#shared/physics/restriction/leak.ts";
import { gapFlow } from "#shared/physics/restriction/lipGap.ts";
import { skirtLeak } from "#shared/physics/skirt.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const AIR = { density: 1.2, viscosity: 1.81e-5 };
const CRAWLER = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 4, cellResistance: 0.02, wireResistance: 0.02 },
};
const { skirt } = CRAWLER;
const BAR = { depth: 8e-4, width: 0.03, met: "either" } as const;
const SPAN = 0.09;

describe("a skirt over a joint", () => {
  // Torricelli with the areas of two slots, 2·w·d, C_d 0.61.
  it("crossed at right angles leaks through two slots more, by hand", () => {
    const more =
      leakFlow(skirtLeak(skirtOver(skirt, BAR, "across", SPAN), AIR), AIR, 900) -
      leakFlow(skirtLeak(skirt, AIR), AIR, 900);
    expect(more).toBeCloseToRelative(0.61 * 2 * 0.03 * 8e-4 * Math.sqrt((2 * 900) / 1.2), 1e-12);
  });

  it("met along a side stands there at the gap and the depth together", () => {
    const lip = { height: skirt.gap + skirt.roughness, land: skirt.land, lossSum: 1.5 };
    const parts =
      gapFlow({ ...lip, perimeter: skirt.perimeter - SPAN }, AIR, 900) +
      gapFlow({ ...lip, perimeter: SPAN, height: lip.height + 8e-4 }, AIR, 900);
    const over = skirtOver({ ...skirt, edge: "square", openings: [], holes: [] }, BAR, "along", SPAN);
    expect(leakFlow(skirtLeak(over, AIR), AIR, 900)).toBeCloseToRelative(parts, 1e-12);
  });

  it.each(["along", "across"] as const)("over a joint of no depth met %s predicts today's figures", (way) => {
    const over = { ...CRAWLER, skirt: skirtOver(skirt, { ...BAR, depth: 0 }, way, SPAN) };
    const [now, then] = [predict(CRAWLER), predict(over)];
    expect(then.suction).toBeCloseToRelative(now.suction, 1e-12);
    expect(then).toEqual(now);
  });

  it("pulls less the deeper the joint, met either way", () => {
    const depths = fc.tuple(
      fc.double({ min: 1e-5, max: 3e-3, noNaN: true }),
      fc.constantFrom("along", "across"),
    );
    const pullOver = (depth: number, way: "along" | "across") =>
      predict({ ...CRAWLER, skirt: skirtOver(skirt, { ...BAR, depth }, way, SPAN) }, []).suction;
    fc.assert(
      fc.property(depths, ([depth, way]) => {
        const met = way as "along" | "across";
        expect(pullOver(1.1 * depth, met)).toBeLessThan(pullOver(depth, met));
      }),
      { numRuns: 40 },
    );
  });

  it("is met in one way where the surface says which, in both else", () => {
    expect(waysMet({ ...BAR, met: "across" })).toEqual(["across"]);
    expect(waysMet(BAR)).toEqual(["along", "across"]);
  });

  it.each([
    ["depth", -1e-4],
    ["width", Number.NaN],
  ])("refuses a %s of %s", (name, value) => {
    expectOutOfRange(() => skirtOver(skirt, { ...BAR, [name]: value }, "across", SPAN), `joint.${name}`);
  });
});

describe("the span of lip over a joint", () => {
  it("is the longest straight side, a square's where none is known", () => {
    expect(jointSpan(0.36, 0.12)).toBe(0.12);
    expect(jointSpan(0.36, null)).toBe(0.09);
  });

  it.each([0.18, 0.4, -0.01, Number.NaN])("refuses a side of %s m on a lip of 0.36 m", (side) => {
    expectOutOfRange(() => jointSpan(0.36, side), "skirt.straightSide");
  });
});
