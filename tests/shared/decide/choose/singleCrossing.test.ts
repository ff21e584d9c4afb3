import { describe, expect, it } from "vitest";
import { singleCrossing } from "#shared/decide/choose/singleCrossing.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { operatingPoints } from "#shared/physics/operatingPoint.ts";
import { assembleMachine } from "#shared/physics/point/machine.ts";
import type { Leak } from "#shared/physics/restriction/leak.ts";

const random = createRandom(17);
const between = (low: number, high: number) => low + (high - low) * random.uniform();
const AIR = { density: 1.19, viscosity: 1.81e-5 };

interface Curve {
  readonly psi: readonly number[];
  readonly lambda: readonly number[];
}

/** Any cubic with a zero, falling or humped, and any parabola above 0 near φ = 0. */
function anyCurve(): Curve {
  const end = between(0.08, 0.4);
  const top = between(0.1, 1.5);
  const [c, d] = [between(-1, 6), between(-2, 6)];
  const psi = [top, (top * (c - 1)) / end, (top * (d - c)) / end ** 2, (-top * d) / end ** 3];
  return { psi, lambda: [between(0.02, 0.5), between(-0.6, 1.5), between(-2, 3)] };
}

const LIP = { perimeter: 0.3, height: 0.0005, land: 0.003, lossSum: 1.5 };

function machineOf({ psi, lambda, warm }: Curve & { readonly warm: boolean }) {
  return assembleMachine({
    rotor: { diameter: between(0.02, 0.06), psi, lambda, phiMin: 0, phiMax: 0.1, sizeCorrection: null },
    motor: {
      kv: between(2000, 9000),
      resistance: between(0.05, 0.5),
      frictionTorque: 2e-4,
      viscousTorque: 0,
      thermalResistance: warm ? between(2, 25) : null,
    },
    pack: { series: 3, parallel: 1, openCircuitVoltage: 3.9, cellResistance: 0.02, wireResistance: 0.015 },
    supply: { duty: between(0.4, 1), driverResistance: 0.01, auxCurrent: 0.3 },
    air: AIR,
    ambient: 293.15,
  });
}

function crossings(curve: Curve): number {
  const machine = machineOf({ ...curve, warm: random.uniform() < 0.5 });
  const height = 10 ** between(-4.3, -2.7);
  const measured = random.uniform() < 0.3;
  const exponent = between(0.5, 1);
  const gap = { ...LIP, height, land: between(0.001, 0.02), lossSum: between(1.05, 2.68) };
  const beside: Leak = random.uniform() < 0.5 ? [{ kind: "opening", area: 10 ** between(-6, -4) }] : [];
  const coefficient = 10 ** between(-6, -3);
  const leak: Leak = [
    measured
      ? { kind: "measuredLeak", coefficient, exponent, ...AIR, perimeter: 1 }
      : { kind: "lipGap", ...gap },
    ...beside,
  ];
  const points = operatingPoints(machine, leak);
  return points.length === 1 && points[0].stable ? 1 : points.length + 10;
}

describe("a rotor for which one crossing is proven", () => {
  it("meets 600 leaks of every kind once, at a stable point, cold or warm, by the scan of every crossing", () => {
    let proven = 0;
    let humped = 0;
    while (proven < 600) {
      const curve = anyCurve();
      if (!singleCrossing(curve.psi, curve.lambda)) continue;
      proven += 1;
      if (curve.psi[1] > 0) humped += 1;
      const found = crossings(curve);
      if (found !== 1) expect.fail(`${found} crossings of ψ ${curve.psi} λ ${curve.lambda}`);
    }
    expect(humped).toBeGreaterThan(50);
  });

  it("has its end at the first zero of ψ", () => {
    expect(singleCrossing([1.05, -1.5, -32], [0.022, 1.1])?.phiEnd).toBeCloseToRelative(
      (1.5 - Math.sqrt(1.5 ** 2 + 4 * 32 * 1.05)) / (-2 * 32),
      1e-12,
    );
  });
});

describe("one crossing is not proven", () => {
  it("where ψ rises faster than φ, and such a rotor does meet some leaks more than once", () => {
    const humped = { psi: [0.05, 0, 150, -700], lambda: [0.3] };
    expect(singleCrossing(humped.psi, humped.lambda)).toBeNull();
    const machine = machineOf({ ...humped, warm: false });
    const counts = Array.from({ length: 200 }, (_, i) => {
      const coefficient = 10 ** (-6 + 0.02 * i);
      const leak: Leak = [{ kind: "measuredLeak", coefficient, exponent: 1, ...AIR, perimeter: 1 }];
      return operatingPoints(machine, leak).length;
    });
    expect(Math.max(...counts)).toBe(3);
  });

  it.each([
    ["ψ has no zero", [1, 0.5], [0.02, 1]],
    ["ψ begins at 0", [0, 1, -5], [0.02, 1]],
    ["λ falls to 0 on the curve", [1, -10], [0.02, -0.5]],
    ["λ rises faster than φ²", [1, -5], [0.001, 0, 0, 60]],
    ["λ falls so fast that the speeding rotor makes up for the flow", [1, -10], [1, -40, 420]],
    ["the curve has more coefficients than the solver takes", [1, 0, 0, 0, 0, -1e5], [0.02, 1]],
  ])("where %s", (_, psi, lambda) => {
    expect(singleCrossing(psi, lambda)).toBeNull();
  });
});

describe("a size correction", () => {
  it("matters to the proof only where λ falls", () => {
    expect(singleCrossing([1, -5], [0.02, 1])?.mostSizeSlope).toBe(Number.POSITIVE_INFINITY);
    expect(singleCrossing([1, -5], [0.3, -0.2])?.mostSizeSlope).toBe(1);
  });
});
