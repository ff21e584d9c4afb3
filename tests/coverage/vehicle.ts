import { type Book, findById } from "#shared/book/book.ts";
import type { Build } from "#shared/model/build.ts";
import { airFrom } from "#shared/physics/air.ts";
import { RPM, torqueConstant } from "#shared/physics/motor.ts";
import { openCircuitVoltage } from "#shared/physics/pack.ts";
import type { PredictInput } from "#shared/physics/predict.ts";
import { EDGE_LOSS } from "#shared/physics/restriction/lipGap.ts";
import type { Scenario } from "./scenarios.ts";

export const WEATHER = { temperature: 293.15, pressure: 101325, humidity: 0.5 };
export const AIR = airFrom(WEATHER);
/** State of charge and mass that the maker's record states [-, kg]. */
export const STATED = { charge: 0.7, diameter: 0.05 };
/** At which the curve test turns [rad/s]. */
export const TEST_SPEED = 26_000 * RPM;
const ROTOR = { psi: [0.31, -0.25, -2.1], lambda: [0.046, 0.16] };
const KV = 3300;
export const MOTOR = {
  kv: KV,
  resistance: 0.13,
  frictionTorque: torqueConstant(KV) * 0.42,
  viscousTorque: 0,
};
const BUILD = "ridge-runner";

/** The demo's parts, of which a maker's vehicle is made. */
export function partsOf(demo: Book) {
  const stored = findById(demo.builds, BUILD)?.data as Build;
  const skirt = findById(demo.skirts, stored.skirt);
  const surface = findById(demo.surfaces, stored.surface);
  const pack = findById(demo.packs, stored.pack);
  const motor = findById(demo.motors, stored.motor);
  if (!skirt || !surface || !pack || !motor) throw new Error("the demo lacks a part");
  const { curve = [[0, 3] as [number, number], [1, 4.2] as [number, number]] } = pack.data.cell;
  const { capacity, minimumVoltage } = pack.data.cell;
  return {
    stored,
    skirt,
    surface,
    pack,
    motor,
    cell: { curve, capacity, minimumVoltage, resistance: 0.02 },
  };
}

export type Parts = ReturnType<typeof partsOf>;

/** A maker's vehicle as it really is. */
export interface Vehicle {
  /** size that the curve test turned [m] */
  readonly testedDiameter: number;
  /** gap at which the leak test stood [m] */
  readonly testGap: number;
  /** ψ at a flow coefficient, with a wave that no polynomial follows [-] */
  readonly psi: (phi: number) => number;
  /** λ at a flow coefficient [-] */
  readonly lambda: (phi: number) => number;
  /** lip loss and friction factor [-] */
  readonly lossSum: number;
  readonly landFriction: number;
  /** state of charge and mass as they really are [-, kg] */
  readonly charge: number;
  readonly mass: number;
  /** its numbers at a state of charge [SI] */
  readonly at: (charge: number) => PredictInput;
}

function skirtOf(parts: Parts, gap: number, lossSum: number, landFriction: number): PredictInput["skirt"] {
  const { perimeter, area, land } = parts.skirt.data;
  const bare = { roughness: 0, openings: [], measuredLeak: null };
  return { perimeter, area, land, lossSum, landFriction, gap, ...bare };
}

/**
 * Draws a vehicle as docs/method/uncertainty.md says that what nobody measured is drawn.
 *
 * @param parts - of the demo
 * @param scenario - what is true of it
 * @param mass - as its record states it [kg]
 * @param draw - a normal number of some standard uncertainty
 */
export function drawVehicle(
  parts: Parts,
  scenario: Scenario,
  mass: number,
  draw: (sd: number) => number,
): Vehicle {
  const testGap = Math.max(5e-5, parts.skirt.data.gap + draw(scenario.gapUncertainty));
  const gap = testGap * (1 + (scenario.setAnew && scenario.leakTest ? draw(0.05) : 0));
  const pullFactor = scenario.pullFactor ?? Math.exp(draw(0.1));
  const [lossSum, landFriction] = [EDGE_LOSS[parts.skirt.data.edge], 1].map(
    (value) => value * Math.max(0.1, 1 + draw(scenario.lip)),
  );
  const trueMass = mass + draw(Math.hypot(1e-3, 5e-3 * mass));
  const testedDiameter = scenario.testedDiameter ?? STATED.diameter;
  const tested = {
    testedDiameter,
    testedTipSpeed: (TEST_SPEED * testedDiameter) / 2,
    testedDensity: AIR.density,
  };
  const sizeCorrection = scenario.testedDiameter ? { ...tested, applied: 1 + draw(0.5) } : null;
  const vehicle = { ...parts.stored.vehicle, mass: trueMass, wheelFriction: 0.7, skirtFriction: 0.3 };
  const wave = (phi: number) => scenario.wave * ROTOR.psi[0] * Math.sin(40 * phi);
  return {
    testedDiameter,
    testGap,
    lossSum,
    landFriction,
    charge: STATED.charge + draw(0.03),
    mass: trueMass,
    psi: (phi) => ROTOR.psi.reduce((sum, c, j) => sum + c * phi ** j, 0) + wave(phi),
    lambda: (phi) => ROTOR.lambda[0] + ROTOR.lambda[1] * phi,
    at: (charge) => ({
      air: WEATHER,
      rotor: { ...ROTOR, diameter: STATED.diameter, phiMin: 0, phiMax: 1, sizeCorrection },
      motor: { ...MOTOR, thermalResistance: null },
      pack: {
        series: parts.pack.data.series,
        parallel: 1,
        openCircuitVoltage: openCircuitVoltage(parts.cell.curve, charge),
        cellResistance: parts.cell.resistance,
        wireResistance: 0.01,
      },
      supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
      skirt: skirtOf(parts, gap, lossSum, landFriction),
      vehicle: { ...vehicle, skirtShare: 0, pullFactor, jetArea: null },
    }),
  };
}
