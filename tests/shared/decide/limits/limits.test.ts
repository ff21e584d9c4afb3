import { describe, expect, it } from "vitest";
import type { LimitKey } from "#shared/decide/limits/limit.ts";
import { type Limits, limitsOf } from "#shared/decide/limits/limits.ts";
import { overVoltageOf } from "#shared/decide/limits/overVoltage.ts";
import { limitWorkings } from "#shared/decide/limits/workings.ts";
import { predict } from "#shared/physics/predict.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { BUILD, KNOWN, withMotor, withSeries } from "./examples.ts";

const limit = (limits: Limits, key: LimitKey) => {
  const found = limits.limits.find((each) => each.key === key);
  if (!found) throw new Error(`no limit ${key}`);
  return found;
};
const known = limitsOf(KNOWN);
const { rotor, skirt, air, vehicle, motor, supply } = BUILD;
const COLD = BUILD.air.temperature;

/** The same build through the prediction itself, on a source of that voltage at the motor. */
const onSource = (voltage: number) => {
  if ("thrust" in rotor || !skirt) throw new Error("the example is ducted");
  const pack = { series: 1, parallel: 1, openCircuitVoltage: voltage, cellResistance: 0, wireResistance: 0 };
  const stiff = { duty: 1, driverResistance: supply.driverResistance, auxCurrent: 0 };
  const cold = { ...motor, windingTemperature: COLD };
  return predict({ air, rotor, motor: cold, pack, supply: stiff, skirt, vehicle }).point;
};

describe("limits of a build with everything known", () => {
  const at = (windingTemperature?: number) =>
    predict({
      ...BUILD,
      rotor: "thrust" in rotor ? (undefined as never) : rotor,
      skirt: skirt as never,
      motor: { ...motor, windingTemperature },
      pack: { series: 2, parallel: 1, openCircuitVoltage: 4.2, cellResistance: 0.026, wireResistance: 0.014 },
    }).point;
  const [settled, point] = [at(), at(COLD)];

  it("are those of the prediction's operating point: the winding's settled, the others cold, when most flows", () => {
    expect(limit(known, "winding").value).toBeCloseToRelative(settled?.windingTemperature ?? 0, 1e-9);
    expect(point?.motorCurrent).toBeGreaterThan(settled?.motorCurrent ?? 0);
    expect(limit(known, "motor-voltage").value).toBeCloseToRelative(point?.packVoltage ?? 0, 1e-9);
    expect(limit(known, "motor-current").value).toBeCloseToRelative(point?.motorCurrent ?? 0, 1e-9);
    expect(limit(known, "cell-current").value).toBeCloseToRelative(point?.packCurrent ?? 0, 1e-9);
    expect(limit(known, "rotor-speed").value).toBeCloseToRelative(point?.speed ?? 0, 1e-9);
    const cell = 4.2 - 0.026 * (point?.packCurrent ?? 0);
    expect(limit(known, "cell-voltage").value).toBeCloseToRelative(cell, 1e-9);
  });

  it("say how much of the way is used: the winding's by its rise, the cell's from its full voltage down", () => {
    const winding = limit(known, "winding");
    expect(winding.ratio).toBeCloseToRelative(((winding.value ?? 0) - 293.15) / 100, 1e-12);
    const cell = limit(known, "cell-voltage");
    expect(cell.ratio).toBeCloseToRelative((4.2 - (cell.value ?? 0)) / (4.2 - 3.2), 1e-12);
    expect(winding.estimated).toBe(true);
    expect(cell.estimated).toBe(false);
  });

  it("are within below 80 % of the way, near up to it, beyond above", () => {
    const at = (maxCurrent: number) =>
      limit(limitsOf({ ...KNOWN, motor: { ...KNOWN.motor, maxCurrent } }), "motor-current").verdict;
    const current = limit(known, "motor-current").value ?? 0;
    expect(at(current / 0.79)).toBe("within");
    expect(at(current / 0.81)).toBe("near");
    expect(at(current / 1.01)).toBe("beyond");
  });

  // By hand: ½·½·0.008·(0.022² + 0.00075²)·ω²;  ½·(0.4/9 g)·(ω·16 mm)²;  0.4 kg · 9.80665 · 2.5 m, √(2gh).
  it("carry the energies of rotor, blade and fall", () => {
    const speed = limit(known, "rotor-speed").value ?? 0;
    const [whole, blade, fall] = known.energies;
    expect(whole.energy).toBeCloseToRelative(0.25 * 0.008 * (0.022 ** 2 + 0.00075 ** 2) * speed ** 2, 1e-12);
    expect(blade).toMatchObject({ key: "blade" });
    expect(blade.energy).toBeCloseToRelative(0.5 * (4e-4 / 9) * (speed * 0.016) ** 2, 1e-12);
    expect(fall.energy).toBeCloseToRelative(BUILD.vehicle.mass * 9.80665 * 2.5, 1e-12);
    expect(fall.speed).toBeCloseToRelative(Math.sqrt(2 * 9.80665 * 2.5), 1e-12);
  });

  it("hold the rotor to half the speed at which disc and blades reach the strength", () => {
    const { stress, burstSpeed, safeSpeed, factor, speed, tipSpeed } = known.rotor;
    // The disc's own by docs/method/limits.md, Rotor, the blades' 2q·r_o²/(r_o² − r_i²) with q = m_b·ω²·r_b/(2π·r_o·t).
    const [ro, ri] = [0.022, 0.00075];
    const disc = ((1240 * speed ** 2) / 4) * (3.36 * ro ** 2 + 0.64 * ri ** 2);
    const q = (4e-4 * speed ** 2 * 0.016) / (2 * Math.PI * ro * 0.0015);
    expect(stress).toBeCloseToRelative(disc + (2 * q * ro ** 2) / (ro ** 2 - ri ** 2), 1e-12);
    expect(factor).toBeCloseToRelative(Math.sqrt(25e6 / (stress ?? 0)), 1e-12);
    expect(burstSpeed).toBeCloseToRelative((factor ?? 0) * speed, 1e-12);
    expect(safeSpeed).toBeCloseToRelative((burstSpeed ?? 0) / 2, 1e-15);
    expect(tipSpeed).toBeCloseToRelative(speed * ro, 1e-15);
  });

  it("open to workings that give the same figures", () => {
    const [winding, stress, burst] = limitWorkings(KNOWN, known);
    expect(winding.result.value).toBeCloseToRelative(limit(known, "winding").value ?? 0, 1e-9);
    expect(stress.result.value).toBeCloseToRelative(known.rotor.stress ?? 0, 1e-12);
    expect(burst.result.value).toBeCloseToRelative(known.rotor.burstSpeed ?? 0, 1e-12);
  });

  // By hand: 3·1240·ω²·0.016·cos 40°·0.011²/0.0008, at the root of a blade on its disc.
  it("open to the bending at a blade's root as well, where the blade stands free, and to what bursts first", () => {
    const standing = { height: 0.011, thickness: 0.0008, radius: 0.016, angle: 40 };
    const input = { ...KNOWN, rotor: KNOWN.rotor && { ...KNOWN.rotor, standing } };
    const limits = limitsOf(input);
    const { stress, burstSpeed, bending, speed } = limits.rotor;
    const root = (3 * 1240 * speed ** 2 * 0.016 * Math.cos((40 * Math.PI) / 180) * 0.011 ** 2) / 0.0008;
    const titled = new Map(limitWorkings(input, limits).map(({ title, result }) => [title, result.value]));
    expect(bending).toBeCloseToRelative(root, 1e-12);
    expect(root).toBeGreaterThan(known.rotor.stress ?? 0);
    expect(titled.get("bending at a blade's root")).toBeCloseToRelative(root, 1e-12);
    expect(titled.get("stress of disc and blades")).toBeCloseToRelative(known.rotor.stress ?? 0, 1e-12);
    expect(titled.get("largest stress of the rotor")).toBeCloseToRelative(stress ?? 0, 1e-12);
    expect(titled.get("speed at which it bursts")).toBeCloseToRelative(burstSpeed ?? 0, 1e-12);
    expect(burstSpeed).toBeCloseToRelative(speed * Math.sqrt(25e6 / root), 1e-12);
  });

  it("with a drive cycle judge the cells under its greatest drive current, the motor under its least", () => {
    const parked = { angle: 90, share: 0.5, driveCurrent: 0, moving: false };
    const cycle = [parked, { angle: 90, share: 0.5, driveCurrent: 1.5 }];
    const limits = limitsOf({ ...KNOWN, build: { ...BUILD, cycle } });
    const driven = { ...BUILD, supply: { ...supply, auxCurrent: supply.auxCurrent + 1.5 } };
    const heavy = limitsOf({ ...KNOWN, build: driven });
    expect(limit(limits, "cell-current")).toEqual(limit(heavy, "cell-current"));
    expect(limit(limits, "cell-voltage")).toEqual(limit(heavy, "cell-voltage"));
    expect(limit(limits, "motor-voltage")).toEqual(limit(known, "motor-voltage"));
    expect(limit(limits, "rotor-speed")).toEqual(limit(known, "rotor-speed"));
    expect(limits.warmUp).toEqual(known.warmUp);
  });

  it("refuse a rotor whose bore is as wide as itself", () => {
    const body = KNOWN.rotor && { ...KNOWN.rotor, boreDiameter: 0.044 };
    expectOutOfRange(() => limitsOf({ ...KNOWN, rotor: body }), "rotor.boreRadius");
  });
});

describe("the over-voltage law", () => {
  // Derived: the prediction solved at both voltages on a stiff source; no second formula.
  it.each([7.91, 11.1, 14.8])(
    "at %s V on a motor rated 7.4 V is that of the build solved twice",
    (voltage) => {
      const over = overVoltageOf(BUILD, voltage, 7.4);
      const [at, rated] = [onSource(voltage), onSource(7.4)];
      if (!at || !rated) throw new Error("the example turns at both");
      expect(over?.ratio).toBeCloseToRelative(voltage / 7.4, 1e-12);
      expect(over?.pressureRatio).toBeCloseToRelative(at.pressure / rated.pressure, 1e-9);
      // Both windings at the air's temperature, of one resistance: heat goes with I².
      const heat = (at.motorCurrent / rated.motorCurrent) ** 2;
      expect(over?.heatRatio).toBeCloseToRelative(heat, 1e-9);
    },
  );

  it("at the rated voltage is 1 throughout", () => {
    expect(overVoltageOf(BUILD, 7.4, 7.4)).toEqual({
      ratio: 1,
      of: "pressure",
      pressureRatio: 1,
      heatRatio: 1,
    });
  });

  // Fan laws: a motor without loss of its own turns with V, so that its pressure grows with V² and its heat I²R with V⁴.
  it("of a motor with next to no friction and resistance is pressure with the square, heat with the fourth power", () => {
    const ideal = withMotor({ resistance: 1e-6, frictionTorque: 0, viscousTorque: 0 }).build;
    const stiff = {
      ...ideal,
      supply: { ...ideal.supply, driverResistance: 0 },
      skirt: skirt && { ...skirt, land: 0 },
    };
    const over = overVoltageOf(stiff, 14.8, 7.4);
    expect(over?.pressureRatio).toBeCloseToRelative(4, 1e-3);
    expect(over?.heatRatio).toBeCloseToRelative(16, 2e-3);
  });

  it("is not known where the rotor stands at the rated voltage", () => {
    expect(overVoltageOf(withMotor({ frictionTorque: 0.05 }).build, 8, 1)).toBeNull();
  });
});

describe("what fails first", () => {
  it("with all within its limits is nothing, and the nearest is named", () => {
    const calm = limitsOf({ ...KNOWN, motor: { windingLimit: 500, ratedVoltage: 12, maxCurrent: 30 } });
    expect(calm.first.sentence).toMatch(
      /^Nothing burns or bursts: nearest is .*, \d+ % of the way to its limit\.$/,
    );
  });

  it("on too many cells is the winding, with the time from cold", () => {
    const hot = limitsOf(withSeries(3));
    expect(hot.first.key).toBe("winding");
    expect(hot.first.time).toBe(hot.warmUp?.timeToLimit);
    expect(hot.first.sentence).toMatch(
      /^The winding reaches 120\u202f°C after \d+ s from cold: the motor burns first\. At 1\.5\d × the motor's rated voltage: pressure × \d\.\d\d, heat in the winding × \d\.\d\d\./,
    );
  });

  it("with a rotor past its strength is the rotor, before anything gets warm", () => {
    const weak = KNOWN.rotor && { ...KNOWN.rotor, strength: 3e6 };
    const { first } = limitsOf({ ...withSeries(3), rotor: weak });
    expect(first).toMatchObject({ key: "rotor-speed", time: 0 });
    expect(first.sentence).toMatch(/bursts first/);
  });

  it("with the rotor past half its burst speed alone is the rotor, without a time", () => {
    const weak = KNOWN.rotor && { ...KNOWN.rotor, strength: 15e6 };
    const { first } = limitsOf({
      ...KNOWN,
      rotor: weak,
      motor: { windingLimit: 500, ratedVoltage: 12, maxCurrent: 30 },
    });
    expect(first).toMatchObject({ key: "rotor-speed", time: null });
    expect(first.sentence).toMatch(/^The rotor turns faster than it should be run/);
  });
});

describe("limits of an open propeller", () => {
  const propeller = {
    kind: "propeller",
    diameter: 0.127,
    thrust: [0.11, 0],
    power: [0.055, 0],
    referenceReynolds: 5e4,
    chord: 0.015,
  } as const;
  const limits = limitsOf({
    ...KNOWN,
    build: { ...BUILD, rotor: propeller, skirt: null },
    motor: { ...KNOWN.motor, ratedVoltage: 5 },
  });

  it("speak of thrust in the place of pressure, and judge motor and cells as ever", () => {
    expect(limits.overVoltage?.of).toBe("thrust");
    expect(limits.first.sentence).toMatch(/thrust × \d/);
    expect(limit(limits, "cell-current").verdict).not.toBe("unknown");
  });

  it("take no disc's stress for its blades, and say whose limit it is", () => {
    expect(limits.rotor).toMatchObject({ stress: null, safeSpeed: null });
    expect(limits.rotor.mach).toBeGreaterThan(0);
    expect(limit(limits, "rotor-speed").missing).toMatch(/propeller's greatest speed, from its maker/);
  });
});

describe("limits with something missing", () => {
  it("name the thermal resistance or the motor's size, where neither is known, and the time constant", () => {
    const limits = limitsOf(withMotor({ thermalResistance: null, thermalTimeConstant: null }));
    expect(limit(limits, "winding")).toMatchObject({ value: null, ratio: null, verdict: "unknown" });
    expect(limit(limits, "winding").missing).toMatch(/thermal resistance, or its diameter and length/);
    expect(limits.warmUp).toBeNull();
    expect(limits.warmUpMissing).toMatch(/thermal resistance/);
    expect(limitsOf(withMotor({ thermalTimeConstant: null })).warmUpMissing).toMatch(/time constant/);
    expect(limits.first.sentence).toMatch(/Not judged for want of data: the winding\.$/);
  });

  it("name material and bore, where the rotor has none, and keep its speed", () => {
    const limits = limitsOf({ ...KNOWN, rotor: null, rotorMass: null });
    expect(limit(limits, "rotor-speed")).toMatchObject({ limit: null, verdict: "unknown" });
    expect(limit(limits, "rotor-speed").value).toBeGreaterThan(1000);
    expect(limit(limits, "rotor-speed").missing).toMatch(/material and bore/);
    expect(limits.energies.slice(0, 2).map(({ energy }) => energy)).toEqual([null, null]);
  });

  it("name the maker's limits one by one, and judge none of them", () => {
    const { cell } = BUILD.pack;
    const bare = { ...BUILD, pack: { ...BUILD.pack, cell: { ...cell, maxCurrent: undefined } } };
    const limits = limitsOf({
      ...KNOWN,
      build: bare,
      motor: { windingLimit: null, ratedVoltage: null, maxCurrent: null },
      fallHeight: null,
    });
    for (const key of ["winding", "motor-voltage", "motor-current", "cell-current"] as const)
      expect(limit(limits, key)).toMatchObject({
        limit: null,
        verdict: "unknown",
        missing: expect.stringMatching(/maker/),
      });
    expect(limits.overVoltage).toBeNull();
    expect(limits.warmUp?.timeToLimit).toBeNull();
    expect(limits.energies[2]).toMatchObject({
      key: "fall",
      energy: null,
      missing: expect.stringMatching(/how high/i),
    });
  });

  it("of a rotor without a blade's mass count a tenth of it at the rim", () => {
    const body = KNOWN.rotor && { ...KNOWN.rotor, blades: null };
    const [, piece] = limitsOf({ ...KNOWN, rotor: body }).energies;
    const speed = limit(known, "rotor-speed").value ?? 0;
    expect(piece.key).toBe("tenth");
    expect(piece.energy).toBeCloseToRelative(0.5 * 8e-4 * (speed * 0.022) ** 2, 1e-12);
  });
});
