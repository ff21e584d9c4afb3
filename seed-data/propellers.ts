import { STAND_VEHICLE } from "../shared/book/standVehicle.ts";
import { STANDARD_GRAVITY } from "../shared/physics/constants.ts";
import { frictionFromNoLoad, RPM } from "../shared/physics/motor.ts";
import { predictPropeller } from "../shared/physics/propeller.ts";
import { noiseSource } from "./noise.ts";
import { MOTORS } from "./truth.ts";

const INVENTED = "Invented for the demo.";

/** The invented truth behind the demo's propeller: coefficients at Re_ref, and per ln Re. */
export const PROPELLERS = {
  "pusher-three": {
    name: "Pusher, three blades",
    sizes: [0.102, 0.127],
    chordRatio: 0.12,
    thrust: [0.132, 0.009],
    power: [0.064, -0.003],
    referenceReynolds: 60_000,
  },
} as const;

type PropellerId = keyof typeof PROPELLERS;
type MotorId = keyof typeof MOTORS;

export const propellerRotors = Object.entries(PROPELLERS).map(([id, truth]) => ({
  id,
  data: {
    name: truth.name,
    kind: "propeller",
    form: "axial",
    sizes: truth.sizes.map((diameter) => ({
      diameter,
      mass: Math.round(0.32 * diameter ** 2 * 1e6) / 1e6,
      height: 0.011,
      price: 2,
    })),
    chord: Math.round(truth.chordRatio * truth.sizes[0] * 1e5) / 1e5,
    note: INVENTED,
  },
}));

/** Supplies at which the stand was read, full throttle [V]. */
const SUPPLIES = [2.6, 3.4, 4.2, 5, 5.9, 6.8, 7.7];
const DAY = { temperature: 291.15, pressure: 100400, humidity: 0.68 };
const GRAM = STANDARD_GRAVITY / 1000;

/** An invented thrust stand: scale, tachometer and ammeter with their noise, the motor's winding cold. */
function thrust(
  { read }: ReturnType<typeof noiseSource>,
  id: PropellerId,
  diameter: number,
  motor: MotorId,
  date: string,
) {
  const { name, chordRatio, thrust: level, power, referenceReynolds } = PROPELLERS[id];
  const { kv, resistance, noLoadCurrent, viscousTorque } = MOTORS[motor];
  const frictionTorque = frictionFromNoLoad(kv, noLoadCurrent);
  const rotor = {
    kind: "propeller",
    diameter,
    thrust: level,
    power,
    referenceReynolds,
    chord: chordRatio * diameter,
  } as const;
  const rows = SUPPLIES.map((supply) => {
    const { point } = predictPropeller({
      air: DAY,
      rotor,
      motor: { kv, resistance, viscousTorque, frictionTorque, thermalResistance: null },
      pack: { series: 1, parallel: 1, openCircuitVoltage: supply, cellResistance: 0.03, wireResistance: 0 },
      supply: { duty: 1, driverResistance: 0.02, auxCurrent: 0 },
      vehicle: STAND_VEHICLE,
    });
    if (!point) throw new Error(`${name} does not turn at ${supply} V`);
    return {
      speed: { value: read(point.speed / RPM, 0.003, 10), unit: "rpm" },
      thrust: { value: read(point.thrust / GRAM, 0.004, 0.5, 0.5), unit: "g" },
      current: { value: read(point.motorCurrent, 0.008, 0.01), unit: "A" },
      voltage: { value: read(point.packVoltage, 0.003, 0.01), unit: "V" },
    };
  });
  return {
    kind: "thrust",
    title: `${name}, ${Math.round(diameter * 1000)} mm at ${SUPPLIES[0]} to ${SUPPLIES[SUPPLIES.length - 1]} V`,
    date,
    air: {
      temperature: { value: 18, unit: "°C" },
      pressure: { value: 1004, unit: "hPa" },
      humidity: { value: 68, unit: "%" },
    },
    note: INVENTED,
    rotor: id,
    diameter: { value: Math.round(diameter * 1e4) / 10, unit: "mm" },
    motor,
    instruments: {
      thrust: { percent: 0.4, absolute: { value: 0.5, unit: "g" } },
      speed: { percent: 0.3 },
      current: { percent: 1 },
    },
    rows,
  };
}

/** @returns the demo's thrust tests, read with a noise of their own: those before them keep theirs */
export function thrusts() {
  const noise = noiseSource(127);
  return [
    thrust(noise, "pusher-three", 0.127, "bell-22", "2026-05-20"),
    thrust(noise, "pusher-three", 0.102, "bell-22", "2026-05-21"),
  ];
}
