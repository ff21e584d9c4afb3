import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluatePolynomial } from "#shared/numeric/polynomial.ts";
import { crossingNear, operatingPoint, operatingPoints } from "#shared/physics/operatingPoint.ts";
import { assembleMachine, type Machine } from "#shared/physics/point/machine.ts";
import { type Leak, leakFlow } from "#shared/physics/restriction/leak.ts";

const AIR = { density: 1.2, viscosity: 1.81e-5 };
const ROTOR = {
  diameter: 0.044,
  psi: [1.05, -1.5, -32],
  lambda: [0.022, 1.1],
  phiMin: 0,
  phiMax: 0.16,
  sizeCorrection: null,
};
const MOTOR = {
  kv: 4900,
  resistance: 0.19,
  frictionTorque: 6e-4,
  viscousTorque: 1e-8,
  thermalResistance: null,
};
const PACK = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 3.8,
  cellResistance: 0.026,
  wireResistance: 0.014,
};
const SUPPLY = { duty: 1, driverResistance: 0.02, auxCurrent: 0.35 };
const LIP = { perimeter: 0.36, land: 0.003, lossSum: 1.5 };

const machine = (changes: Partial<Parameters<typeof assembleMachine>[0]> = {}): Machine =>
  assembleMachine({
    rotor: ROTOR,
    motor: MOTOR,
    pack: PACK,
    supply: SUPPLY,
    air: AIR,
    ambient: 293.15,
    ...changes,
  });
const leak = (height: number, openArea = 0): Leak => [
  { kind: "lipGap", ...LIP, height },
  { kind: "opening", area: openArea, dischargeCoefficient: 1 },
];

describe("the operating point, on a purely quadratic leak", () => {
  // Closed form: Q = a√(2Δp/ρ) gives φ·A·u = a·u·√ψ(φ), the speed falls out: φ is the same at every voltage.
  it.each([1, 2, 3, 6])("with %s cells lies at the φ of the closed form", (series) => {
    const area = 2e-4;
    const rotorArea = (Math.PI / 4) * ROTOR.diameter ** 2;
    const [point] = operatingPoints(machine({ pack: { ...PACK, series } }), leak(0, area));
    const ratio = (rotorArea / area) ** 2;
    // (φ·A/a)² = ψ(φ) = 1.05 − 1.5φ − 32φ²
    const phi = (-1.5 + Math.sqrt(1.5 ** 2 + 4 * 1.05 * (32 + ratio))) / (2 * (32 + ratio));
    expect(point.phi).toBeCloseToRelative(phi, 1e-12);
  });
});

describe("the operating point, in its limits", () => {
  it("of a sealed skirt is the blocked reading: no flow, ½ρu²ψ(0), stable", () => {
    const [point, ...others] = operatingPoints(machine(), leak(0));
    const u = (point.speed * ROTOR.diameter) / 2;
    expect(others).toEqual([]);
    expect(point.flow).toBe(0);
    expect(point.pressure).toBeCloseToRelative(0.5 * AIR.density * u * u * 1.05, 1e-14);
    expect(point.stable).toBe(true);
  });

  it("of a leak that grows without end goes to the open reading", () => {
    const [point] = operatingPoints(machine(), leak(0.05, 1));
    expect(point.pressure).toBeLessThan(0.01);
    expect(point.phi).toBeCloseToRelative(machine().phiEnd, 1e-4);
  });

  it("of a motor that can't overcome its own friction is none", () => {
    expect(operatingPoints(machine({ motor: { ...MOTOR, frictionTorque: 1 } }), leak(6e-4))).toEqual([]);
    expect(operatingPoint([])).toBeNull();
  });
});

describe("the operating point, of a winding that warms", () => {
  const volts = 2 * 3.8 - (0.026 * 2 + 0.014) * 0.35;
  const others = 0.02 + 0.026 * 2 + 0.014;
  const k = 60 / (2 * Math.PI * 4900);
  /** R = R₂₀(1 + 0.00393·(T − 20 °C)) at T = T_a + R_th·I²R(T), I = V/(R + R_rest), by halving */
  function settledStanding(thermalResistance: number): number {
    let [lo, hi] = [293.15, 1e5];
    for (let i = 0; i < 100; i++) {
      const middle = (lo + hi) / 2;
      const resistance = 0.19 * (1 + 0.00393 * (middle - 293.15));
      const heat = (volts / (resistance + others)) ** 2 * resistance;
      if (293.15 + thermalResistance * heat > middle) lo = middle;
      else hi = middle;
    }
    return 0.19 * (1 + 0.00393 * (lo - 293.15));
  }
  const motor = (frictionTorque: number) => ({ ...MOTOR, frictionTorque, thermalResistance: 10 });

  it.each([0, 3e-4])(
    "with a gap of %s m is none where the hot winding leaves less than the friction",
    (gap) => {
      const between = (k * volts) / (settledStanding(10) + others);
      expect(operatingPoints(machine({ motor: motor(1.01 * between) }), leak(gap))).toEqual([]);
      const [point] = operatingPoints(machine({ motor: motor(0.99 * between) }), leak(gap));
      expect(point.speed).toBeGreaterThan(0);
    },
  );

  it("of a curve without a zero is none as well, no lack of data", () => {
    const rotor = { ...ROTOR, psi: [1, 1], sizeCorrection: null };
    expect(operatingPoints(machine({ rotor, motor: motor(0.04) }), leak(3e-4))).toEqual([]);
  });

  it("on a curve whose λ falls below 0 further out is found where λ is above 0", () => {
    const rotor = { ...ROTOR, psi: [0.9, 0.1, -8], lambda: [0.2, -1], phiMax: 0.3 };
    const warm = { ...MOTOR, kv: 7800, resistance: 0.35, frictionTorque: 2e-4, thermalResistance: 20 };
    const [point] = operatingPoints(machine({ rotor, motor: warm }), leak(6e-4));
    expect(point.lambda).toBeGreaterThan(0);
    expect(point.windingTemperature).toBeGreaterThan(300);
  });

  it("in cold air starts from the cold winding, not from 20 °C", () => {
    const frictionTorque = (1.02 * (k * volts)) / (0.19 + others);
    const cold = { ...MOTOR, frictionTorque, thermalResistance: 1e-4 };
    expect(operatingPoints(machine({ motor: cold, ambient: 258.15 }), leak(3e-4))).toHaveLength(1);
    expect(operatingPoints(machine({ motor: cold }), leak(3e-4))).toEqual([]);
  });
});

describe("the operating point, on random machines and gaps", () => {
  it("balances pressure and torque to 1e-9", () => {
    const inputs = fc.record({
      diameter: fc.double({ min: 0.02, max: 0.09, noNaN: true }),
      kv: fc.double({ min: 1500, max: 12000, noNaN: true }),
      resistance: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
      height: fc.double({ min: 2e-5, max: 3e-3, noNaN: true }),
      thermalResistance: fc.option(fc.double({ min: 1, max: 30, noNaN: true })),
    });
    fc.assert(
      fc.property(inputs, ({ diameter, kv, resistance, height, thermalResistance }) => {
        const rotor = { ...ROTOR, diameter };
        const motor = { ...MOTOR, kv, resistance, frictionTorque: 0.2 / kv, thermalResistance };
        const law = leak(height, 4e-6);
        const point = operatingPoint(operatingPoints(machine({ rotor, motor }), law));
        if (!point) return expect.fail("no point");
        expect(leakFlow(law, AIR, point.pressure)).toBeCloseToRelative(point.flow, 1e-9);
        const k = 60 / (2 * Math.PI * kv);
        const u = (point.speed * diameter) / 2;
        const load =
          0.5 *
          1.2 *
          (Math.PI / 4) *
          diameter ** 2 *
          u ** 2 *
          evaluatePolynomial(ROTOR.lambda, point.phi) *
          (diameter / 2);
        const net = k * point.current - motor.frictionTorque - 1e-8 * point.speed - load;
        expect(Math.abs(net) / (k * point.current)).toBeLessThan(1e-9);
        const resistanceOfPack = (2 * 0.026) / 1 + 0.014;
        const driving = 2 * 3.8 - resistanceOfPack * 0.35;
        const expected = (driving - k * point.speed) / (point.windingResistance + 0.02 + resistanceOfPack);
        expect(point.current).toBeCloseToRelative(expected, 1e-9);
        if (thermalResistance !== null) {
          const settled = 293.15 + thermalResistance * point.current ** 2 * point.windingResistance;
          expect(point.windingTemperature).toBeCloseToRelative(settled, 1e-9);
        }
      }),
      { numRuns: 200, seed: 20 },
    );
  });
});

describe("the operating point, on a curve with a stall hump", () => {
  // ψ falls, rises and falls again; a leak of nearly constant pressure drop (measured leak would need x < 0.5) is
  // imitated by a steep quadratic one: its parabola cuts the hump three times.
  const hump = { ...ROTOR, psi: [1, -12, 140, -450], phiMax: 0.2 };

  it("finds every crossing by rising flow, the middle one unstable where the rotor rises more steeply", () => {
    for (const area of [1e-5, 3e-5, 6e-5, 1e-4, 1.5e-4, 2e-4, 3e-4]) {
      const points = operatingPoints(machine({ rotor: hump }), leak(0, area));
      expect(points.length % 2).toBe(1);
      points.forEach((point, i) => {
        if (i > 0) expect(point.flow).toBeGreaterThan(points[i - 1].flow);
        if (i % 2 === 1) expect(point.stable).toBe(false);
      });
      expect(operatingPoint(points)).toBe(points.at(-1));
    }
  });

  it("takes the neighbour after a small change", () => {
    const before = operatingPoint(operatingPoints(machine(), leak(6e-4)));
    const changed = machine({ pack: { ...PACK, openCircuitVoltage: 3.5 } });
    const whole = operatingPoint(operatingPoints(changed, leak(6e-4)));
    expect(crossingNear(changed, leak(6e-4), before?.phi ?? 0)?.phi).toBeCloseToRelative(
      whole?.phi ?? 0,
      1e-12,
    );
  });
});

describe("the size correction, in the operating point", () => {
  const tested = { testedDiameter: 0.044, testedTipSpeed: 60, testedDensity: 1.2, testedViscosity: 1.81e-5 };

  it("changes nothing at the tested size and tip speed", () => {
    const plain = operatingPoints(machine(), leak(6e-4))[0];
    const u = (plain.speed * ROTOR.diameter) / 2;
    const rotor = { ...ROTOR, sizeCorrection: { ...tested, testedTipSpeed: u } };
    const corrected = operatingPoints(machine({ rotor }), leak(6e-4))[0];
    expect(corrected.pressure).toBeCloseToRelative(plain.pressure, 1e-9);
  });

  it("favours a larger rotor and costs a smaller one", () => {
    const factor = (diameter: number) =>
      machine({ rotor: { ...ROTOR, diameter, sizeCorrection: tested } }).sizeLaw.factor(60);
    expect(factor(0.08)).toBeGreaterThan(1);
    expect(factor(0.022)).toBeLessThan(1);
  });
});
