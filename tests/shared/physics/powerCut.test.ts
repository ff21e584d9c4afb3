import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { powerCut } from "#shared/physics/powerCut.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";

const J = 1.2e-6;

/** An invented crawler whose leak is an opening alone: quadratic. */
const quadratic: PredictInput = {
  air: { temperature: 293.15, pressure: 101325, humidity: 0.5 },
  rotor: {
    diameter: 0.042,
    psi: [0.9, 0.1, -8],
    lambda: [0.02, 0.3],
    phiMin: 0,
    phiMax: 0.3,
    sizeCorrection: null,
  },
  motor: { kv: 7800, resistance: 0.35, frictionTorque: 0, viscousTorque: 0, thermalResistance: null },
  pack: { series: 1, parallel: 1, openCircuitVoltage: 4.1, cellResistance: 0.05, wireResistance: 0.02 },
  supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
  skirt: {
    perimeter: 0.25,
    area: 0.004,
    gap: 0,
    roughness: 0,
    land: 0,
    edge: "square",
    openings: [{ area: 6e-5, dischargeCoefficient: 0.61 }],
    measuredLeak: null,
  },
  vehicle: {
    mass: 0.1,
    wheelFriction: 0.7,
    skirtFriction: 0.3,
    skirtShare: 0,
    rollingResistance: 0.02,
    driven: "both",
    wheelbase: 0.11,
    track: 0.09,
    cgHeight: 0.02,
    cgFromRear: 0.055,
    suctionFromRear: 0.055,
    jolt: 0,
    jetArea: null,
    jetAngle: 0,
  },
};
const withMotor = (change: Partial<PredictInput["motor"]>): PredictInput => ({
  ...quadratic,
  motor: { ...quadratic.motor, ...change },
});
const without = (lambda: number[]) => ({ rotor: { ...quadratic.rotor, lambda } });

const at = (input: PredictInput, angle: number) => {
  const { attitudes } = powerCut({ ...input, inertia: J });
  return attitudes.find((each) => each.angle === angle) ?? expect.fail(`no ${angle}°`);
};

describe("the seconds until an attitude lets go", () => {
  // By hand: φ is the same at every speed, so M = P/ω₀·(ω/ω₀)², F ∝ ω² and ω_hold = ω₀/√margin: t = (J·ω₀²/P)(√margin − 1).
  it.each([90, 180])("at %i° under a quadratic leak without friction: the closed form", (angle) => {
    const { point, attitudes } = predict(quadratic);
    const { parked, driving } = attitudes.find((each) => each.angle === angle) ?? expect.fail();
    const whole = (J * (point?.speed ?? 0) ** 2) / (point?.shaftPower ?? 0);
    const cut = at(quadratic, angle);
    expect(cut.parked).toBeCloseToRelative(whole * (Math.sqrt(parked.margin ?? 0) - 1), 1e-8);
    expect(cut.driving).toBeCloseToRelative(whole * (Math.sqrt(driving.margin ?? 0) - 1), 1e-8);
  });

  it("with next to no air to move: the speed falls in a straight line, t = J(ω₀ − ω_hold)/M_c", () => {
    const input = { ...withMotor({ frictionTorque: 3e-4 }), ...without([1e-9]) };
    const { point, attitudes } = predict(input);
    const speed = point?.speed ?? 0;
    const margin = attitudes.find(({ angle }) => angle === 90)?.parked.margin ?? 0;
    const expected = (J * (speed - speed / Math.sqrt(margin))) / 3e-4;
    expect(at(input, 90).parked).toBeCloseToRelative(expected, 1e-6);
  });

  it("grows in proportion to the inertia, and shrinks with friction", () => {
    const [once, twice] = [J, 2 * J].map(
      (inertia) => powerCut({ ...quadratic, inertia }).attitudes[1].parked,
    );
    expect(twice).toBeCloseToRelative(2 * (once ?? 0), 1e-12);
    const rubbing = at(withMotor({ viscousTorque: 1e-7 }), 90);
    expect(rubbing.parked).toBeLessThan(once ?? 0);
  });

  it("is none on the floor, where no pull is needed, and 0 where it isn't held even while running", () => {
    expect(at(quadratic, 0).parked).toBeNull();
    const heavy = { ...quadratic, vehicle: { ...quadratic.vehicle, mass: 3 } };
    expect(at(heavy, 180)).toMatchObject({ parked: 0, driving: 0 });
    expect(powerCut({ ...heavy, inertia: J }).toHold).toBeNull();
  });

  it("where the running gear gives: as long as a rigid one, with a stiffness without end", () => {
    const lip = { ...quadratic, skirt: { ...quadratic.skirt, gap: 3e-4, land: 0.003 } };
    const stiff = { ...lip, vehicle: { ...lip.vehicle, verticalStiffness: 1e12 } };
    expect(at(stiff, 90).parked).toBeCloseToRelative(at(lip, 90).parked ?? 0, 1e-6);
  });

  it("answers for the worst attitudes as well, which let go first", () => {
    const { worst } = predict(quadratic);
    const times = powerCut({ ...quadratic, inertia: J }).attitudes.map(({ parked }) => parked ?? Infinity);
    expect(at(quadratic, worst.parked.angle).parked).toBe(Math.min(...times));
  });
});

describe("the seconds from switching on to holding", () => {
  // By hand: J·dω/dt = (k/R)(V − kω), so ω = (V/k)(1 − e^(−t·k²/(JR))).
  it("without air or friction: the closed form of a motor that spins up", () => {
    const input = { ...quadratic, ...without([1e-9]) };
    const { point, worst } = predict(input);
    const k = 60 / (2 * Math.PI * 7800);
    const resistance = 0.35 + 0.05 + 0.02;
    const needed = (point?.speed ?? 0) / Math.sqrt(worst.parked.margin ?? 0);
    const expected = ((J * resistance) / k ** 2) * Math.log(1 / (1 - (needed * k) / 4.1));
    expect(powerCut({ ...input, inertia: J }).toHold).toBeCloseToRelative(expected, 1e-6);
  });
});

describe("an inertia that can't be", () => {
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("%s: is refused by name", (inertia) => {
    expect(() => powerCut({ ...quadratic, inertia })).toThrow(OutOfRangeError);
    expect(() => powerCut({ ...quadratic, inertia })).toThrow(/inertia/);
  });
});
