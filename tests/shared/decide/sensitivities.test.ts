import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Sensitivities, sensitivitiesOf } from "#shared/decide/sensitivities.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const pack = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 3.9,
  cellResistance: 0.026,
  wireResistance: 0.014,
};
const crawler: PredictInput = { ...PANE_CRAWLER, pack };
/** A rotor that takes no power on a motor without friction: its speed is kv·V, whatever the leak. */
const unloaded: PredictInput = {
  ...crawler,
  rotor: { ...crawler.rotor, lambda: [0] },
  motor: { ...crawler.motor, frictionTorque: 0, viscousTorque: 0 },
  supply: { ...crawler.supply, auxCurrent: 0 },
  skirt: { ...crawler.skirt, land: 0 },
  vehicle: { ...crawler.vehicle, cgHeight: 0 },
};
const sealed: PredictInput = { ...unloaded, skirt: { ...unloaded.skirt, gap: 0 } };
const CEILING = { attitude: 180, mode: "parked" } as const;

function elasticity({ sensitivities }: Sensitivities, path: string): number {
  return sensitivities.find((each) => each.path === path)?.elasticity ?? Number.NaN;
}

describe("sensitivitiesOf, closed forms", () => {
  const ofSealed = sensitivitiesOf(sealed, CEILING);

  // Exact: m = ½ρ(kv·V·D/2)²·ψ₀·A/(m·g) on a ceiling, sealed, unloaded.
  it.each([
    ["skirt.area", 1],
    ["vehicle.mass", -1],
    ["rotor.psi", 1],
    ["rotor.diameter", 2],
    ["motor.kv", 2],
    ["pack.openCircuitVoltage", 2],
    ["supply.duty", 2],
    ["motor.resistance", 0],
    ["pack.cellResistance", 0],
    ["vehicle.wheelFriction", 0],
    ["vehicle.track", 0],
    ["skirt.perimeter", 0],
  ])("sealed and unloaded, %s on the ceiling: the margin goes with its power %d", (path, expected) => {
    expect(Math.abs(elasticity(ofSealed, path) - expected)).toBeLessThan(1e-9);
  });

  it("sealed and unloaded, air pressure: as the density, of which dry air's share follows it", () => {
    const dry = sensitivitiesOf({ ...sealed, air: { ...sealed.air, humidity: 0 } }, CEILING);
    // Compressibility of air alone is left: CIPM-2007 gives Z = 0.9996 at 1 atm.
    expect(elasticity(dry, "air.pressure")).toBeCloseToRelative(1, 5e-4);
    expect(elasticity(dry, "air.temperature")).toBeCloseToRelative(-1, 3e-3);
  });

  it("on the worst attitude, friction alone: 1/(1 + μ²), from m ∝ 1/√(1 + 1/μ²)", () => {
    const worst = sensitivitiesOf(sealed, { attitude: "worst", mode: "parked" });
    expect(elasticity(worst, "vehicle.wheelFriction")).toBeCloseToRelative(1 / (1 + 0.7 ** 2), 1e-9);
  });

  it("on the wall, sliding: the margin goes with μ and with 1/m", () => {
    const wall = sensitivitiesOf(sealed, { attitude: 90, mode: "parked" });
    expect(elasticity(wall, "vehicle.wheelFriction")).toBeCloseToRelative(1, 1e-9);
    expect(elasticity(wall, "vehicle.mass")).toBeCloseToRelative(-1, 1e-9);
  });

  it("driving on the wall, skirt unloaded: μ/(μ − c_rr)", () => {
    const wall = sensitivitiesOf(sealed, { attitude: 90, mode: "driving" });
    expect(elasticity(wall, "vehicle.wheelFriction")).toBeCloseToRelative(0.7 / 0.68, 1e-9);
    expect(elasticity(wall, "vehicle.rollingResistance")).toBeCloseToRelative(-0.02 / 0.68, 1e-8);
  });

  it("at the crossing with a pure quadratic leak: the gap by the slope of ψ there", () => {
    // ψ(φ) = κφ², κ ∝ 1/(P·h)²: d ln ψ/d ln h = −2·ψ′φ/(ψ′φ − 2ψ), from the implicit function.
    const { point } = predict(unloaded);
    const [phi, psi] = [point?.phi ?? 0, point?.psi ?? 0];
    const slope = (-1.5 - 64 * phi) * phi;
    const expected = (-2 * slope) / (slope - 2 * psi);
    const found = sensitivitiesOf(unloaded, CEILING);
    expect(elasticity(found, "skirt.gap")).toBeCloseToRelative(expected, 1e-8);
    expect(elasticity(found, "skirt.perimeter")).toBeCloseToRelative(expected, 1e-8);
    expect(elasticity(found, "skirt.lossSum")).toBeCloseToRelative(-expected / 2, 1e-8);
  });
});

describe("sensitivitiesOf, properties", () => {
  const builds = fc.record({
    gap: fc.double({ min: 1e-4, max: 1.5e-3, noNaN: true }),
    mu: fc.double({ min: 0.3, max: 1, noNaN: true }),
    volts: fc.double({ min: 3.2, max: 4.2, noNaN: true }),
    attitude: fc.constantFrom<number | "worst">("worst", 90, 124, 153, 180),
    mode: fc.constantFrom("parked" as const, "driving" as const),
  });

  it("predict a change of 0.1 % to second order, of any input of any build", () => {
    fc.assert(
      fc.property(builds, ({ gap, mu, volts, attitude, mode }) => {
        const build: PredictInput = {
          ...crawler,
          pack: { ...pack, openCircuitVoltage: volts },
          skirt: { ...crawler.skirt, gap },
          vehicle: { ...crawler.vehicle, wheelFriction: mu },
        };
        const found = sensitivitiesOf(build, { attitude, mode });
        const wider = { ...build, skirt: { ...build.skirt, gap: gap * 1.001 } };
        const heavier = { ...build, vehicle: { ...build.vehicle, mass: 0.4 * 1.001 } };
        const marginOf = (each: PredictInput) => sensitivitiesOf(each, { attitude, mode }).margin ?? 0;
        const step = Math.log(1.001);
        for (const [each, path] of [
          [wider, "skirt.gap"],
          [heavier, "vehicle.mass"],
        ] as const) {
          if (found.warnings.some(({ code }) => code === "margin-turns")) continue;
          const change = Math.log(marginOf(each) / (found.margin ?? 0)) / step;
          expect(Math.abs(change - elasticity(found, path)), path).toBeLessThan(5e-3);
        }
      }),
      { numRuns: 15 },
    );
  });

  it("stand largest first, whatever their sign", () => {
    const sizes = sensitivitiesOf(crawler, CEILING).sensitivities.map((each) => Math.abs(each.elasticity));
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    expect(sizes.every(Number.isFinite)).toBe(true);
  });
});

describe("sensitivitiesOf, odd input", () => {
  it("on the floor: no margin, no figures, a reason", () => {
    const found = sensitivitiesOf(crawler, { attitude: 0, mode: "parked" });
    expect(found).toMatchObject({ margin: null, sensitivities: [], warnings: [{ code: "no-pull-needed" }] });
  });

  it("of a motor that stands still: margin 0, no figures, a reason", () => {
    const build = { ...crawler, motor: { ...crawler.motor, frictionTorque: 1 } };
    const found = sensitivitiesOf(build, CEILING);
    expect(found).toMatchObject({ margin: 0, sensitivities: [], warnings: [{ code: "nothing-held" }] });
  });

  it("of an input at 0: left out, and said", () => {
    const found = sensitivitiesOf(crawler, CEILING);
    expect(elasticity(found, "skirt.roughness")).toBeNaN();
    const note = found.warnings.find(({ code }) => code === "left-out-at-zero");
    expect(note?.message).toMatch(/skirt\.roughness/);
    expect(note?.message).not.toMatch(/skirt\.gap/);
  });

  it("of a duty of 1, which can't rise: the same from below as just under it", () => {
    const full = elasticity(sensitivitiesOf(crawler, CEILING), "supply.duty");
    const under = { ...crawler, supply: { ...crawler.supply, duty: 0.99 } };
    expect(full).toBeCloseToRelative(elasticity(sensitivitiesOf(under, CEILING), "supply.duty"), 0.02);
  });

  it("of a skirt that carries all and hardly grips: steep from below, (μ_s − μ_w)/μ_s", () => {
    const vehicle = { ...sealed.vehicle, skirtShare: 1, skirtFriction: 0.002 };
    const wall = sensitivitiesOf({ ...sealed, vehicle }, { attitude: 90, mode: "parked" });
    expect(elasticity(wall, "vehicle.skirtShare")).toBeCloseToRelative((0.002 - 0.7) / 0.002, 1e-5);
  });

  it.each([
    [0.999, "a full duty, at which the motor just turns: as the voltage"],
    [1 - 1e-7, "a motor that a hair's breadth would stop: left out, and said"],
  ])("of a friction of %d of the stall torque and %s", (share, _) => {
    const stall = (60 / (2 * Math.PI * crawler.motor.kv)) * (7.8 / crawler.motor.resistance);
    const motor = { ...crawler.motor, frictionTorque: share * stall, thermalResistance: null };
    const stiff = { ...pack, cellResistance: 0, wireResistance: 0 };
    const supply = { duty: 1, driverResistance: 0, auxCurrent: 0 };
    const answer = sensitivitiesOf({ ...crawler, motor, pack: stiff, supply }, CEILING);
    expect(answer.sensitivities.every((each) => Number.isFinite(each.elasticity))).toBe(true);
    if (share === 0.999)
      expect(elasticity(answer, "supply.duty")).toBeCloseToRelative(
        elasticity(answer, "pack.openCircuitVoltage"),
        1e-3,
      );
    else expect(answer.warnings.map(({ code }) => code)).toContain("left-out-at-edge");
  });

  it("where tip hands over to slide: both sides are named", () => {
    // Tip and slide need alike at the wall where 2·h/track = 1/μ: one side of μ slides, the other tips.
    const both = {
      ...sealed,
      vehicle: { ...sealed.vehicle, wheelFriction: 0.9, cgHeight: 0.05, wheelbase: 1 },
    };
    const found = sensitivitiesOf(both, { attitude: 90, mode: "parked" });
    const note = found.warnings.find(({ code }) => code === "margin-turns");
    expect(note?.message).toMatch(/vehicle\.wheelFriction \(1\.00 below, 0\.00 above\)/);
  });

  it("of a measured leak: its coefficient counts, the lip's numbers are not named", () => {
    const measuredLeak = { coefficient: 3e-4, exponent: 0.55, density: 1.2, viscosity: 1.81e-5 };
    const build = { ...crawler, skirt: { ...crawler.skirt, measuredLeak } };
    const found = sensitivitiesOf(build, CEILING);
    expect(elasticity(found, "skirt.measuredLeak.coefficient")).toBeLessThan(0);
    expect(elasticity(found, "skirt.gap")).toBeNaN();
  });

  it("of an opening: its area by its place in the list", () => {
    const build = {
      ...crawler,
      skirt: { ...crawler.skirt, openings: [{ area: 1e-5, dischargeCoefficient: 0.6 }] },
    };
    expect(elasticity(sensitivitiesOf(build, CEILING), "skirt.openings.0.area")).toBeLessThan(0);
  });

  it("of a propeller: thrust coefficients in the place of ψ, no skirt", () => {
    const { skirt: _skirt, ...rest } = crawler;
    const found = sensitivitiesOf({ ...rest, rotor: PANE_PROPELLER }, CEILING);
    expect(elasticity(found, "rotor.thrust")).toBeCloseToRelative(1, 1e-9);
    expect(elasticity(found, "rotor.power")).toBeLessThan(0);
    expect(found.sensitivities.some(({ path }) => path.startsWith("skirt."))).toBe(false);
  });

  it("with an attitude beyond the half turn: refused by name", () => {
    expectOutOfRange(() => sensitivitiesOf(crawler, { attitude: 190, mode: "parked" }), "attitude");
  });
});
