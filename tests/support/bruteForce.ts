import { createRandom } from "#shared/numeric/random.ts";
import { moistAirDensity } from "#shared/physics/air.ts";
import { CASE, RESULT, solveCase } from "#shared/physics/point/newton.ts";
import type { PredictInput } from "#shared/physics/predict.ts";

export interface FiveUncertainties {
  readonly "skirt.gap": number;
  readonly "vehicle.wheelFriction": number;
  readonly "vehicle.mass": number;
  readonly "pack.openCircuitVoltage": number;
  readonly "rotor.psi.0": number;
}

/** Sutherland's law at 20 °C, written out. */
const VISCOSITY = 1.716e-5 * (293.15 / 273.15) ** 1.5 * ((273.15 + 110.4) / (293.15 + 110.4));

interface Drawn {
  readonly gap: number;
  readonly voltage: number;
  readonly psi0: number;
}

function writeCase(c: Float64Array, build: PredictInput, density: number, drawn: Drawn): void {
  const { rotor, motor, pack, supply, skirt } = build;
  const [, b = 0, a = 0] = rotor.psi;
  c.set([drawn.psi0, b, a], CASE.psi);
  c.set(rotor.lambda, CASE.lambda);
  c[CASE.phiEnd] = (-b - Math.sqrt(b * b - 4 * a * drawn.psi0)) / (2 * a);
  c[CASE.radius] = rotor.diameter / 2;
  c[CASE.density] = density;
  c[CASE.torqueConstant] = 60 / (2 * Math.PI * motor.kv);
  const fromPack = (pack.series * pack.cellResistance) / pack.parallel + pack.wireResistance;
  c[CASE.resistance] = motor.resistance + supply.driverResistance + fromPack;
  c[CASE.frictionTorque] = motor.frictionTorque;
  c[CASE.viscousTorque] = motor.viscousTorque;
  c[CASE.drivingVoltage] = pack.series * drawn.voltage - fromPack * supply.auxCurrent;
  c[CASE.gapArea] = skirt.perimeter * drawn.gap;
  c[CASE.gapInertia] = 0.5 * density * (skirt.lossSum ?? Number.NaN);
  c[CASE.gapLaminar] = (12 * VISCOSITY * skirt.land) / drawn.gap ** 2;
  const blasius = 0.3164 * (VISCOSITY / (density * 2 * drawn.gap)) ** 0.25;
  c[CASE.gapTurbulent] = (0.5 * density * blasius * skirt.land) / (2 * drawn.gap);
  c[CASE.gapCrossing] = ((96 / 0.3164) ** (4 / 3) * VISCOSITY) / (density * 2 * drawn.gap);
}

/** F = Δp(A + σPℓ), half the friction's share of Δp missing under the land. */
function pullOf(c: Float64Array, result: Float64Array, { skirt }: PredictInput): number {
  const [v, pressure] = [result[RESULT.gapVelocity], result[RESULT.pressure]];
  const frictionDrop = v <= c[CASE.gapCrossing] ? c[CASE.gapLaminar] * v : c[CASE.gapTurbulent] * v ** 1.75;
  return pressure * (skirt.area + (1 - (0.5 * frictionDrop) / pressure) * skirt.perimeter * skirt.land);
}

/** Two independent standard normal numbers at a time, by the polar formula of Box and Muller (Ann. Math. Stat. 29 (1958) 610). */
function normals(seed: number): () => number {
  const random = createRandom(seed);
  const ready: number[] = [];
  return () => {
    if (ready.length === 0) {
      const radius = Math.sqrt(-2 * Math.log(1 - random.uniform()));
      const turn = 2 * Math.PI * random.uniform();
      ready.push(radius * Math.cos(turn), radius * Math.sin(turn));
    }
    return ready.pop() ?? Number.NaN;
  };
}

/**
 * Driving margins on the wall of independent draws: another generator, another transformation, another solver and the
 * condition of the wall written out, F·(μ − c_rr) against m·g.
 */
export function bruteForceMargins(build: PredictInput, u: FiveUncertainties, count: number): number[] {
  const normal = normals(20_260_301);
  const density = moistAirDensity(build.air);
  const [c, result] = [new Float64Array(CASE.length), new Float64Array(RESULT.length)];
  const { mass, wheelFriction, rollingResistance } = build.vehicle;
  return Array.from({ length: count }, () => {
    const gap = build.skirt.gap + u["skirt.gap"] * normal();
    const voltage = build.pack.openCircuitVoltage + u["pack.openCircuitVoltage"] * normal();
    const psi0 = build.rotor.psi[0] + u["rotor.psi.0"] * normal();
    writeCase(c, build, density, { gap, voltage, psi0 });
    result[RESULT.phi] = 0.5 * c[CASE.phiEnd];
    result[RESULT.gapVelocity] = 30;
    if (!solveCase(c, result)) throw new Error("no convergence");
    const grip = wheelFriction + u["vehicle.wheelFriction"] * normal() - rollingResistance;
    const weight = (mass + u["vehicle.mass"] * normal()) * 9.80665;
    return (pullOf(c, result, build) * grip) / weight;
  });
}
