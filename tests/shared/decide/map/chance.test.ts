import { describe, expect, it } from "vitest";
import { type ChanceQuestion, chanceAt, chanceNodes, chanceOver } from "#shared/decide/map/chance.ts";
import { buildAt, type MapBuild, type MapKey } from "#shared/decide/map/place.ts";
import { uncertainAt } from "#shared/decide/map/uncertainAt.ts";
import type { Uncertainties } from "#shared/decide/uncertainInput.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { type AnyPredictInput, isPropeller, predictAny } from "#shared/physics/predictAny.ts";
import { axisOf, CELL, mapBuild, openInput } from "#tests/support/mapBuild.ts";
import { mapField } from "#tests/support/mapField.ts";

/** One of each way to be uncertain; the mass is known worst of all. */
const UNCERTAIN: Uncertainties = {
  uncertainty: {
    "vehicle.mass": 0.02,
    "skirt.gap": 6e-5,
    "vehicle.wheelFriction": 0.04,
    "pack.openCircuitVoltage": 0.02,
    "rotor.sizeCorrection.applied": 0.5,
  },
  logNormal: { "vehicle.pullFactor": 0.1 },
  correlated: [
    {
      paths: ["motor.kv", "motor.resistance"],
      covariance: [
        [120 ** 2, 0.6 * 120 * 0.02],
        [0.6 * 120 * 0.02, 0.02 ** 2],
      ],
    },
  ],
  shared: [{ name: "gain", effects: [{ path: "rotor.psi.0", by: 0.02 }] }],
};
const [NODES, SAMPLES, ALL] = [9, 256, 4096];

function asked(x: MapKey, y: MapKey, change: Partial<MapBuild> = {}): ChanceQuestion {
  const axes = [axisOf(x, NODES), axisOf(y, NODES)] as const;
  const own = mapBuild(
    change,
    axes.flatMap(({ key, values }) => (key === "diameter" ? values : [])),
  );
  const vehicle = { ...own.input.vehicle, pullFactor: 1, mass: isPropeller(own.input) ? 0.06 : 0.55 };
  const of = { ...own, input: { ...own.input, vehicle } as AnyPredictInput };
  return {
    question: { of, x: axes[0], y: axes[1] },
    uncertain: UNCERTAIN,
    told: of.input,
    charge: 0.05,
    samples: SAMPLES,
  };
}

/** Chance of holding on the worst attitude as /predict samples it, of the build at a place. */
function predicted(question: ChanceQuestion, place: Readonly<Partial<Record<MapKey, number>>>): number {
  const { of } = question.question;
  const build = buildAt(of, place);
  const { worst } = predictAny(build, []);
  const uncertain = uncertainAt(of, question, build, place.charge ?? of.charge);
  const { attitudes } = uncertaintyOf(build, { ...uncertain, samples: ALL, angles: [worst.driving.angle] });
  return attitudes[0].driving.holds;
}

/** Three standard errors of both shares, and half a sample. */
const allowed = (p: number) => {
  const q = Math.min(1 - 1 / SAMPLES, Math.max(1 / SAMPLES, p));
  return 3 * Math.sqrt(q * (1 - q) * (1 / SAMPLES + 1 / ALL)) + 0.5 / SAMPLES;
};

describe.each([
  ["diameter", "kv", "ducted"],
  ["gap", "mass", "ducted"],
  ["duty", "wheelFriction", "ducted"],
  ["charge", "mass", "ducted"],
  ["series", "mass", "ducted"],
  ["kv", "wheelFriction", "open"],
] as [MapKey, MapKey, string][])("the chance of holding over %s and %s, %s", (x, y, kind) => {
  const question = asked(x, y, kind === "open" ? { input: openInput() } : {});
  const nodes = chanceNodes(question);
  const random = createRandom(5);
  const between = (values: readonly number[], whole: boolean) => {
    const at = values[0] + random.uniform() * (values[values.length - 1] - values[0]);
    return whole ? Math.round(at) : at;
  };

  it("is at random places, most of them in question, that of /predict within the sampling error", () => {
    const { of } = question.question;
    let open = 0;
    for (let i = 0; i < 400 && open < 8; i++) {
      const place = {
        [x]: between(nodes.x.values, x === "series"),
        [y]: between(nodes.y.values, y === "series"),
      };
      const { worst, point } = predictAny(buildAt(of, place), []);
      const margin = worst.driving.margin ?? Number.POSITIVE_INFINITY;
      const said = chanceAt(nodes, place[x], place[y], margin);
      if (!point || (i > 2 && (said < 0.05 || said > 0.95))) continue;
      if (said > 0.05 && said < 0.95) open += 1;
      const expected = predicted(question, place);
      expect(Math.abs(said - expected), JSON.stringify({ place, margin, said, expected })).toBeLessThan(
        allowed(expected),
      );
    }
    expect(open).toBe(8);
  });

  it("is at a sampled place the share of its own samples that hold", () => {
    const place = { [x]: nodes.x.values[2], [y]: nodes.y.values[1] };
    const margin = predictAny(buildAt(question.question.of, place), []).worst.driving.margin ?? 0;
    const [spread] = [nodes.spreads[1 * nodes.x.values.length + 2]];
    const held = (spread ?? new Float64Array()).filter((s) => margin * Math.exp(s) >= 1).length;
    if (spread) expect(chanceAt(nodes, place[x], place[y], margin)).toBeCloseTo(held / SAMPLES, 2);
  });
});

describe("the chance of holding on a map", () => {
  const question = asked("gap", "mass");
  const nodes = chanceNodes(question);

  it("has at every point what its place has, by the margin that was solved there", () => {
    const fine = { ...question.question, x: axisOf("gap", 31), y: axisOf("mass", 21), timed: false };
    const field = mapField(fine);
    const chance = chanceOver(fine, field, nodes);
    expect(chance[7 * 31 + 4]).toBe(
      chanceAt(nodes, fine.x.values[4], fine.y.values[7], field.margin[7 * 31 + 4]),
    );
    expect(chance.every((each) => each >= 0 && each <= 1)).toBe(true);
    // Heavier at one gap is never surer.
    for (let row = 1; row < 21; row++)
      expect(chance[row * 31 + 9]).toBeLessThanOrEqual(chance[(row - 1) * 31 + 9] + 0.02);
  });

  it("is 1 where no pull is needed, 0 where none is made, nothing where there is no answer", () => {
    expect(chanceAt(nodes, 5e-4, 0.5, Number.POSITIVE_INFINITY)).toBe(1);
    expect(chanceAt(nodes, 5e-4, 0.5, 0)).toBe(0);
    expect(chanceAt(nodes, 5e-4, 0.5, Number.NaN)).toBeNaN();
  });

  it("of a build of which all is known is a step at a margin of 1", () => {
    const sure = chanceNodes({ ...question, uncertain: { uncertainty: {} }, samples: 4 });
    expect(chanceAt(sure, 5e-4, 0.5, 1.0001)).toBe(1);
    expect(chanceAt(sure, 5e-4, 0.5, 0.9999)).toBe(0);
  });
});

describe("what is uncertain in a build that a map moves", () => {
  const question = asked("kv", "charge");
  const { of } = question.question;

  it("grows with the winding: K_v and R are known relative to themselves", () => {
    const there = buildAt(of, { kv: 2 * of.input.motor.kv });
    const { correlated } = uncertainAt(of, question, there, of.charge);
    // twice K_v: 2² of its variance; a quarter of R: 1/16; of the covariance 2/4
    const [[kk, kr], [, rr]] = UNCERTAIN.correlated?.[0].covariance ?? [];
    expect(correlated?.[0].covariance[0][0]).toBeCloseToRelative(4 * kk, 1e-12);
    expect(correlated?.[0].covariance[0][1]).toBeCloseToRelative(kr / 2, 1e-12);
    expect(correlated?.[0].covariance[1][1]).toBeCloseToRelative(rr / 16, 1e-12);
  });

  it("has the voltage by the slope of the cell's curve at the charge there, and no size law where none is applied", () => {
    const there = buildAt(of, { charge: 0.2 });
    const { uncertainty } = uncertainAt(of, question, there, 0.2);
    // The curve rises by (3.6 − 3.2)/0.3 V from empty to full there.
    expect(CELL.curve[1]).toEqual([0.3, 3.6]);
    expect(uncertainty["pack.openCircuitVoltage"]).toBeGreaterThan(0.05);
    expect(uncertainty).not.toHaveProperty("rotor.sizeCorrection.applied");
    expect(uncertainty["vehicle.mass"]).toBe(0.02);
  });
});
