import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Way, waysToHold } from "#shared/decide/ways/ways.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const G = 9.80665;
const pack = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 3.9,
  cellResistance: 0.026,
  wireResistance: 0.014,
};
const crawler: PredictInput = { ...PANE_CRAWLER, pack };
const cell = {
  capacity: 3600,
  minimumVoltage: 3,
  resistance: 0.026,
  curve: [
    [0, 3],
    [0.05, 3.4],
    [0.3, 3.65],
    [0.7, 3.85],
    [1, 4.18],
  ] as [number, number][],
};

const asked = (attitude: number | "worst", mode: "parked" | "driving", targetMargin: number) => ({
  attitude,
  mode,
  targetMargin,
});

function wayOf(ways: readonly Way[], handle: Way["handle"]): Way {
  const way = ways.find((each) => each.handle === handle);
  if (!way) throw new Error(`no ${handle}`);
  return way;
}

const parkedOf = (build: PredictInput, angle: number) =>
  predict(build, [angle]).attitudes[0].parked.margin ?? Number.POSITIVE_INFINITY;

/** The same handles, written down once more, by other hands. */
const TURNED: Readonly<Record<Way["handle"], (build: PredictInput, x: number) => PredictInput>> = {
  diameter: (b, diameter) => ({ ...b, rotor: { ...b.rotor, diameter } }),
  series: (b, series) => ({ ...b, pack: { ...b.pack, series } }),
  cellVoltage: (b, openCircuitVoltage) => ({ ...b, pack: { ...b.pack, openCircuitVoltage } }),
  duty: (b, duty) => ({ ...b, supply: { ...b.supply, duty } }),
  gap: (b, gap) => ({ ...b, skirt: { ...b.skirt, gap } }),
  area: (b, area) => ({
    ...b,
    skirt: { ...b.skirt, area, perimeter: b.skirt.perimeter * Math.sqrt(area / b.skirt.area) },
  }),
  mass: (b, mass) => ({ ...b, vehicle: { ...b.vehicle, mass } }),
  wheelFriction: (b, wheelFriction) => ({ ...b, vehicle: { ...b.vehicle, wheelFriction } }),
};

describe("waysToHold, closed forms", () => {
  const { suction } = predict(crawler);

  it("of the mass on the ceiling, where lift-off alone counts: F_s/(g·target)", () => {
    const { ways } = waysToHold({ build: crawler, cell: null }, asked(180, "parked", 1.5));
    expect(wayOf(ways, "mass").value).toBeCloseToRelative(suction / (G * 1.5), 1e-11);
  });

  it("of the friction at its worst attitude: √(1 + 1/μ²) = F_s/(W·target)", () => {
    const build = {
      ...crawler,
      vehicle: { ...crawler.vehicle, cgHeight: 0, mass: suction / (G * 1.5 * Math.hypot(1, 1 / 0.82)) },
    };
    const way = wayOf(waysToHold({ build, cell: null }, asked("worst", "parked", 1.5)).ways, "wheelFriction");
    expect(way).toMatchObject({ state: "does", bound: "at-least", to: null });
    expect(way.value).toBeCloseToRelative(0.82, 1e-9);
  });

  it("of a sealed skirt's area: the pull is Δp·A and Δp does not change", () => {
    const skirt = { ...crawler.skirt, gap: 0, land: 0 };
    const build = { ...crawler, skirt, vehicle: { ...crawler.vehicle, mass: 1 } };
    const margin = parkedOf(build, 180);
    const way = wayOf(waysToHold({ build, cell: null }, asked(180, "parked", 1.3 * margin)).ways, "area");
    expect(way.value).toBeCloseToRelative(1.3 * skirt.area, 1e-9);
  });

  it("of the cell voltage of a sealed, frictionless rotor that takes no power: Δp ∝ V²", () => {
    const build = {
      ...crawler,
      rotor: { ...crawler.rotor, lambda: [0] },
      motor: { ...crawler.motor, frictionTorque: 0, viscousTorque: 0 },
      supply: { ...crawler.supply, auxCurrent: 0 },
      skirt: { ...crawler.skirt, gap: 0, land: 0 },
    };
    const margin = parkedOf(build, 180);
    const { ways } = waysToHold({ build, cell: null }, asked(180, "parked", 1.21 * margin));
    expect(wayOf(ways, "cellVoltage").value).toBeCloseToRelative(1.1 * 3.9, 1e-9);
    expect(wayOf(ways, "series")).toMatchObject({ state: "does", value: 3, bound: "at-least" });
    expect(wayOf(ways, "duty")).toMatchObject({ state: "never", best: { value: 1 } });
    expect(wayOf(ways, "diameter").value).toBeCloseToRelative(1.1 * 0.044, 1e-9);
  });
});

describe("waysToHold against a fine scan of every handle", () => {
  const builds = fc.record({
    gap: fc.double({ min: 1e-4, max: 1.5e-3, noNaN: true }),
    mass: fc.double({ min: 0.2, max: 1.5, noNaN: true }),
    mu: fc.double({ min: 0.3, max: 1, noNaN: true }),
    volts: fc.double({ min: 3.2, max: 4.2, noNaN: true }),
    duty: fc.double({ min: 0.5, max: 1, noNaN: true }),
    diameter: fc.double({ min: 0.03, max: 0.06, noNaN: true }),
    angle: fc.constantFrom(70, 90, 124, 153, 180),
    target: fc.double({ min: 0.8, max: 3, noNaN: true }),
  });
  const FINE = 400;

  function scanned(build: PredictInput, way: Way, angle: number): { x: number; margin: number }[] {
    const [low, high] = way.limits;
    const count = way.handle === "series" ? high - low : FINE;
    return Array.from({ length: count + 1 }, (_, i) => {
      const x = low + ((high - low) * i) / count;
      return { x, margin: parkedOf(TURNED[way.handle](build, x), angle) };
    });
  }

  it.each([4310, 4311, 4312, 4313])(
    "of random builds, seed %i: values meet the target to 1e-6, nothing nearer does, never means never",
    (seed) => {
      fc.assert(
        fc.property(builds, ({ gap, mass, mu, volts, duty, diameter, angle, target }) => {
          const build: PredictInput = {
            ...crawler,
            rotor: { ...crawler.rotor, diameter },
            pack: { ...pack, openCircuitVoltage: volts },
            supply: { ...crawler.supply, duty },
            skirt: { ...crawler.skirt, gap },
            vehicle: { ...crawler.vehicle, mass, wheelFriction: mu },
          };
          const standing = parkedOf(build, angle);
          for (const way of waysToHold({ build, cell: null }, asked(angle, "parked", target)).ways) {
            const fine = scanned(build, way, angle);
            const meets = fine.filter(({ margin }) => margin >= target);
            expect(way.state === "already", way.handle).toBe(standing >= target);
            if (way.state === "never") expect(meets, way.handle).toEqual([]);
            const most = Math.max(...fine.map(({ margin }) => margin));
            if (way.state === "never") expect(way.best.margin).toBeGreaterThanOrEqual(most * (1 - 1e-4));
            if (way.value !== null && way.handle !== "series")
              expect(parkedOf(TURNED[way.handle](build, way.value), angle) / target - 1).toBeLessThan(1e-6);
            if (way.value !== null)
              expect(parkedOf(TURNED[way.handle](build, way.value), angle)).toBeGreaterThanOrEqual(target);
            const reach = Math.abs((way.value ?? way.now) - way.now);
            const nearer = fine.filter(({ x }) => Math.abs(x - way.now) < reach * (1 - 1e-9));
            if (way.state === "does")
              expect(
                nearer.some(({ margin }) => margin >= target),
                way.handle,
              ).toBe(false);
            if (way.state === "already" && way.value !== null)
              expect(
                nearer.every(({ margin }) => margin >= target),
                way.handle,
              ).toBe(true);
            if (way.state === "already" && way.value === null)
              expect(meets.length, way.handle).toBe(fine.length);
            const [from, to] = [way.from ?? Number.NEGATIVE_INFINITY, way.to ?? Number.POSITIVE_INFINITY];
            if (way.state !== "never")
              expect(
                fine.filter(({ x }) => x >= from && x <= to).every(({ margin }) => margin >= target),
              ).toBe(true);
          }
        }),
        { numRuns: 3, seed },
      );
    },
  );
});

describe("waysToHold, both sides of a monotone handle", () => {
  it("of a build that misses: the gap must go down to where one that holds may go up to", () => {
    const target = 1.5;
    const { ways } = waysToHold({ build: crawler, cell: null }, asked(90, "driving", target));
    const missing = wayOf(ways, "gap");
    const other = { ...crawler, skirt: { ...crawler.skirt, gap: missing.state === "does" ? 1e-4 : 2e-3 } };
    const mirrored = wayOf(
      waysToHold({ build: other, cell: null }, asked(90, "driving", target)).ways,
      "gap",
    );
    expect([missing.state, mirrored.state].sort()).toEqual(["already", "does"]);
    expect(mirrored.bound).toBe("at-most");
    expect(mirrored.value).toBeCloseToRelative(missing.value ?? 0, 1e-9);
  });
});

describe("waysToHold, side effects", () => {
  const heavy = {
    ...crawler,
    motor: { ...crawler.motor, thermalResistance: 8 },
    vehicle: { ...crawler.vehicle, mass: 0.9 },
  };
  const { ways } = waysToHold({ build: heavy, cell }, asked(180, "parked", 2));

  it("of more voltage: warmer, faster, more current, stress by the square of the tip speed, less time", () => {
    const { effects } = wayOf(ways, "series");
    if (!effects?.windingTemperature || !effects.tipSpeed || !effects.runTime || !effects.packCurrent)
      throw new Error("effects expected");
    expect(effects.windingTemperature.after).toBeGreaterThan(effects.windingTemperature.now);
    expect(effects.packCurrent.after).toBeGreaterThan(effects.packCurrent.now);
    expect(effects.rotorStress).toBeCloseToRelative(
      (effects.tipSpeed.after / effects.tipSpeed.now) ** 2,
      1e-14,
    );
    expect(effects.runTime.after).toBeLessThan(effects.runTime.now);
    expect(effects.tipSpeed.now).toBeCloseToRelative(((predict(heavy).point?.speed ?? 0) * 0.044) / 2, 1e-14);
  });

  it("of less mass: none at all", () => {
    const { effects } = wayOf(ways, "mass");
    expect(effects?.rotorStress).toBe(1);
    expect(effects?.runTime?.after).toBe(effects?.runTime?.now);
    expect(effects?.windingTemperature?.after).toBe(effects?.windingTemperature?.now);
  });

  it("without a cell or a thermal resistance: what can't be known is null", () => {
    const plain = { ...heavy, motor: crawler.motor };
    const { effects } = wayOf(
      waysToHold({ build: plain, cell: null }, asked(180, "parked", 2)).ways,
      "series",
    );
    expect(effects?.runTime).toBeNull();
    expect(effects?.windingTemperature).toBeNull();
    expect(effects?.tipSpeed).not.toBeNull();
  });

  it("with the cell's curve: the cell voltage is looked for within it", () => {
    expect(wayOf(ways, "cellVoltage").limits).toEqual([3, 4.18]);
  });
});

describe("waysToHold, what is known of parts at other sizes", () => {
  it("takes the rotor at another diameter from the setting", () => {
    const half = (diameter: number) => ({
      ...crawler.rotor,
      diameter,
      psi: crawler.rotor.psi.map((c) => c / 2),
    });
    const heavy = { ...crawler, vehicle: { ...crawler.vehicle, mass: 1 } };
    const plain = wayOf(waysToHold({ build: heavy, cell: null }, asked(180, "parked", 1.1)).ways, "diameter");
    const weaker = wayOf(
      waysToHold({ build: heavy, cell: null, rotorAt: half }, asked(180, "parked", 1.1)).ways,
      "diameter",
    );
    expect(weaker.best.margin ?? 0).not.toBe(plain.best.margin);
    expect(weaker.now).toBe(plain.now);
  });

  it("of a leak that was measured: gap and area are no handles, unless other gaps are known", () => {
    const measuredLeak = { coefficient: 3e-4, exponent: 0.55, density: 1.2, viscosity: 1.81e-5 };
    const build = { ...crawler, skirt: { ...crawler.skirt, measuredLeak } };
    const keys = (ways: readonly Way[]) => ways.map(({ handle }) => handle);
    expect(keys(waysToHold({ build, cell: null }, asked(90, "parked", 1.5)).ways)).not.toContain("gap");
    const skirtAt = (gap: number) => ({ ...crawler.skirt, gap });
    const { ways } = waysToHold({ build, cell: null, skirtAt }, asked(90, "parked", 1.5));
    expect(keys(ways)).toContain("gap");
    expect(keys(ways)).not.toContain("area");
  });
});

describe("waysToHold, odd and bad input", () => {
  it("of a propeller: every handle but the skirt's", () => {
    const { skirt: _skirt, rotor: _rotor, ...rest } = crawler;
    const build = { ...rest, rotor: PANE_PROPELLER };
    const { ways } = waysToHold({ build, cell: null }, asked(180, "parked", 1.5));
    expect(ways.map(({ handle }) => handle)).toEqual([
      "diameter",
      "series",
      "cellVoltage",
      "duty",
      "mass",
      "wheelFriction",
    ]);
  });

  it("on the floor, where no pull is needed: every handle already does", () => {
    const { margin, ways } = waysToHold({ build: crawler, cell: null }, asked(0, "parked", 1.5));
    expect(margin).toBeNull();
    for (const way of ways) expect(way).toMatchObject({ state: "already", value: null, effects: null });
  });

  it("of a motor that stands still: more voltage may do, friction never does", () => {
    const build = { ...crawler, motor: { ...crawler.motor, frictionTorque: 0.08 } };
    const { margin, ways } = waysToHold({ build, cell }, asked(180, "parked", 1.01));
    expect(margin).toBe(0);
    expect(wayOf(ways, "wheelFriction")).toMatchObject({ state: "never", best: { margin: 0 } });
    const series = wayOf(ways, "series");
    expect(series.state === "never" || series.effects?.tipSpeed === null).toBe(true);
  });

  it.each([0, -1, Number.NaN])("with a target of %s: refused by name", (target) => {
    expectOutOfRange(
      () => waysToHold({ build: crawler, cell: null }, asked(90, "parked", target)),
      "targetMargin",
    );
  });

  it.each([-1, 181, Number.NaN])("with an attitude of %s°: refused by name", (attitude) => {
    expectOutOfRange(
      () => waysToHold({ build: crawler, cell: null }, asked(attitude, "parked", 1.5)),
      "attitude",
    );
  });

  it("with a build that can't be: refused with its path, not searched around", () => {
    const build = { ...crawler, pack: { ...pack, series: 0 } };
    expectOutOfRange(() => waysToHold({ build, cell: null }, asked(90, "parked", 1.5)), "pack.series");
  });
});
