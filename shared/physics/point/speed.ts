import { evaluatePolynomial } from "../../numeric/polynomial.ts";
import { findRoot } from "../../numeric/root.ts";
import { WINDING_REFERENCE_TEMPERATURE } from "../constants.ts";
import { windingResistance } from "../winding.ts";
import type { Circuit, Machine, MotorInput } from "./machine.ts";

/** Speed, current and winding of the machine where its torques balance at one φ. */
export interface Balance {
  /** ω [rad/s]; 0 where a winding that warms takes the motor below its friction; NaN where no steady speed exists (λ below 0 drives the rotor) */
  readonly speed: number;
  /** I of the winding [A] */
  readonly current: number;
  /** R_m, warm [Ω] */
  readonly windingResistance: number;
  /** [K] */
  readonly windingTemperature: number;
}

/** @returns the balance of a shaft that stands: current by the winding alone [A], none where other loads leave no voltage */
export function standing(circuit: Circuit, winding: number, temperature: number): Balance {
  const current = Math.max(0, circuit.drivingVoltage) / (winding + circuit.circuitResistance);
  return { speed: 0, current, windingResistance: winding, windingTemperature: temperature };
}

function balanceAt(machine: Machine, lambda: number, winding: number, temperature: number): Balance {
  const { torqueConstant: k, air, area, radius, motor } = machine;
  const resistance = winding + machine.circuitResistance;
  const load = 0.5 * air.density * area * radius ** 3 * lambda;
  const damping = (k * k) / resistance + motor.viscousTorque;
  const drive = (k * machine.drivingVoltage) / resistance - motor.frictionTorque;
  if (drive <= 0) return standing(machine, winding, temperature);
  const speed = (2 * drive) / (damping + Math.sqrt(damping * damping + 4 * load * drive));
  const current = (machine.drivingVoltage - k * speed) / resistance;
  return { speed, current, windingResistance: winding, windingTemperature: temperature };
}

type AtWinding = (resistance: number, temperature: number) => Balance;

/** Steps of the secant before the slower search takes over, which any continuous heat ends. */
const SECANT_STEPS = 12;
/** A step this small beside the temperature is the last: the next would be its product with the one before, below rounding. */
const LAST_STEP = 1e-9;

/** The winding at which the heat of its own current holds it. */
function settled(at: (temperature: number) => Balance, ambient: number, thermalResistance: number): Balance {
  const excessOf = ({ current, windingResistance: warm, windingTemperature }: Balance) =>
    ambient + thermalResistance * current ** 2 * warm - windingTemperature;
  const cold = at(ambient);
  // The rise that the cold winding's heat would make, doubled until the heat falls behind.
  let rise = excessOf(cold);
  if (Number.isNaN(rise) || rise === 0) return cold;
  let [last, lastExcess] = [ambient, rise];
  let x = ambient + rise;
  let now = at(x);
  let excess = excessOf(now);
  while (excess > 0) {
    [last, lastExcess] = [x, excess];
    rise *= 2;
    x = ambient + rise;
    now = at(x);
    excess = excessOf(now);
  }
  if (Number.isNaN(excess)) return now;
  let [low, high] = [last, x];
  for (let step = 0; step < SECANT_STEPS; step++) {
    if (excess === 0) return now;
    const next = x - (excess * (x - last)) / (excess - lastExcess);
    if (!(next > low && next < high)) break;
    const isLast = Math.abs(next - x) < LAST_STEP * next;
    [last, lastExcess, x] = [x, excess, next];
    now = at(x);
    if (isLast) return now;
    excess = excessOf(now);
    if (excess > 0) low = x;
    else high = x;
  }
  return at(findRoot((temperature) => excessOf(at(temperature)), low, high).root);
}

/** @returns the balance with the winding as given, settled in its own heat, or at 20 °C where nothing tells its temperature */
export function withWinding(motor: MotorInput, ambient: number, balance: AtWinding): Balance {
  const { resistance, thermalResistance, windingTemperature: now } = motor;
  const at = (temperature: number) => balance(windingResistance(resistance, temperature), temperature);
  if (now !== undefined) return at(now);
  if (thermalResistance !== null) return settled(at, ambient, thermalResistance);
  return balance(resistance, WINDING_REFERENCE_TEMPERATURE);
}

/**
 * Speed at which motor and rotor balance at one flow coefficient, the winding settled unless its temperature is given.
 *
 *     k·I − M_c − M_v·ω = ½ρA(D/2)³ω²·λ(φ),  I = (V_drive − k·ω)/(R_m + R),  T = T_a + R_th·I²·R_m(T)
 *
 * @param machine - from {@link assembleMachine}
 * @param phi - flow coefficient [-]
 * @returns speed [rad/s], current [A], winding resistance [Ω] and temperature [K]; speed 0 where the settled winding leaves too little torque for the friction, NaN where none is steady
 *
 * Valid where the cold motor overcomes its friction. The heat of a winding at fixed voltage falls in the end as it warms, so a temperature always exists. Source: docs/method/motor.md
 */
export function balancedSpeed(machine: Machine, phi: number): Balance {
  const { motor, ambient, rotor } = machine;
  const lambda = evaluatePolynomial(rotor.lambda, phi);
  return withWinding(motor, ambient, (winding, temperature) =>
    balanceAt(machine, lambda, winding, temperature),
  );
}

/**
 * Current of a motor that stands still although it is switched on.
 *
 *     I = V_drive/(R_m + R), 0 where other loads leave no voltage;  winding as in {@link balancedSpeed}
 *
 * @param circuit - from {@link assembleCircuit} [-]
 * @param ambient - of the air, where the winding's heat goes [K]
 * @returns speed 0 [rad/s], current [A], winding resistance [Ω] and temperature [K]
 *
 * Valid where the motor can't overcome its friction. Source: Ohm's law; docs/method/motor.md
 */
export function standingBalance(circuit: Circuit, ambient: number): Balance {
  return withWinding(circuit.motor, ambient, (winding, temperature) =>
    standing(circuit, winding, temperature),
  );
}
