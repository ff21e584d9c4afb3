import { describe, expect, it } from "vitest";
import { asFastCase, writeFastCase } from "#shared/physics/point/fastCase.ts";
import { jointFriction, jointVelocity, WARM } from "#shared/physics/point/newtonWarm.ts";
import { jointFlow, jointLaw } from "#shared/physics/restriction/joint.ts";
import { gapFlow } from "#shared/physics/restriction/lipGap.ts";
import type { Restriction } from "#shared/physics/restriction/restriction.ts";
import { sweepTables, writeCase } from "#tests/benchmarks/sweepCases.ts";
import { RESTRICTION_EXAMPLES } from "#tests/support/restrictions.ts";

const air = { density: 1.2, viscosity: 1.81e-5, pressure: 101_325 };
const { joint, lipGap, measuredLeak, opening, holes, honeycomb } = RESTRICTION_EXAMPLES;
const shut: Restriction = { ...lipGap, height: 0 };

describe("the leak as a fast case", () => {
  // Δp = inertia·v² + (laminar·v up to the crossing, turbulent·v^1.75 beyond) at v = Q/(P·h).
  it.each([20, 900, 4000])("of a lip at %s Pa holds the law of its velocity", (pressure) => {
    const fast = asFastCase([lipGap], air);
    if (!fast) return expect.fail("no fast case");
    const v = gapFlow(lipGap, air, pressure) / fast.gapArea;
    const friction = v <= fast.gapCrossing ? fast.gapLaminar * v : fast.gapTurbulent * v ** 1.75;
    expect(fast.gapInertia * v * v + friction).toBeCloseToRelative(pressure, 1e-12);
  });

  it.each([2, 20, 900, 4000])(
    "of a joint at %s Pa has its law's flow, its friction and their slope",
    (pressure) => {
      const fast = asFastCase([lipGap, joint], air);
      if (!fast) return expect.fail("no fast case");
      const c = new Float64Array(WARM.length);
      writeFastCase(c, fast);
      const v = jointVelocity(c, pressure);
      expect(fast.jointArea * v).toBeCloseToRelative(jointFlow(joint, air, pressure), 1e-12);
      const lost = jointLaw.underLip?.frictionDrop(joint, air, pressure) ?? Number.NaN;
      expect(jointFriction(c, v)).toBeCloseToRelative(lost, 1e-12);
    },
  );

  it("adds openings up, and leaves out what passes no air", () => {
    const fast = asFastCase([shut, opening, { ...opening, area: 6e-6 }], air);
    expect(fast?.openingConductance).toBeCloseToRelative(0.61 * 1e-5 * Math.sqrt(2 / 1.2), 1e-14);
    expect(fast?.gapArea).toBe(0);
  });

  it("of a measured leak holds its power law at this air", () => {
    const fast = asFastCase([measuredLeak, opening], air);
    expect(fast?.leakCoefficient).toBe(5e-5);
    expect(fast?.leakExponent).toBe(0.6);
  });

  it.each([
    ["drilled holes", [lipGap, holes]],
    ["a honeycomb", [lipGap, honeycomb]],
    ["two lips at different heights", [lipGap, { ...lipGap, height: 1e-3 }]],
    ["a lip beside a measured leak", [measuredLeak, lipGap]],
    ["two joints", [lipGap, joint, { ...joint, depth: 1e-4 }]],
  ] as const)("is none with %s", (_, leak) => {
    expect(asFastCase(leak, air)).toBeNull();
  });
});

describe("a fast case written into a case", () => {
  it("fills the slots of the sweep's own case by name", () => {
    const [sweep, c] = [new Float64Array(WARM.length), new Float64Array(WARM.length)];
    writeCase(sweep, sweepTables(), 3);
    const fast = asFastCase(
      [
        { kind: "lipGap", perimeter: 0.36, height: 0.0011, land: 0.004, lossSum: 1.5 },
        { kind: "opening", area: 1.2e-5, dischargeCoefficient: 0.61 },
      ],
      air,
    );
    if (!fast) return expect.fail("no fast case");
    writeFastCase(c, fast);
    for (const slot of ["gapArea", "gapInertia", "gapLaminar", "gapTurbulent", "gapCrossing"] as const)
      expect(c[WARM[slot]]).toBeCloseToRelative(sweep[WARM[slot]], 1e-14);
    expect(c[WARM.openingConductance]).toBeCloseToRelative(sweep[WARM.openingConductance], 1e-14);
  });
});
