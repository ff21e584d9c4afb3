import { NotEnoughDataError } from "../numeric/errors.ts";
import { differentiatePolynomial, evaluatePolynomial } from "../numeric/polynomial.ts";
import { findRoot } from "../numeric/root.ts";
import { type Machine, overcomesFriction, psiAt } from "./point/machine.ts";
import { type Balance, balancedSpeed } from "./point/speed.ts";
import { isSealed, type Leak, leakFlow, leakSlope } from "./restriction/leak.ts";

/** Where rotor and leak agree and the motor's torque balances. */
export interface Crossing extends Balance {
  readonly phi: number;
  /** Q [m³/s] */
  readonly flow: number;
  /** Δp of the cavity [Pa] */
  readonly pressure: number;
  /** ψ, size correction included [-] */
  readonly psi: number;
  readonly lambda: number;
  readonly stable: boolean;
}

/** Intervals of the first scan over φ; two crossings closer than one of them are found where the difference turns. */
const SCAN = 256;
/** Halvings of a turn of the difference, in search of a pair of crossings that a scan steps over. */
const TURN_STEPS = 60;
/** Times the fitted range is doubled in search of an end, for a curve whose ψ has no zero. */
const MOST_DOUBLINGS = 40;

interface Flows {
  readonly balance: Balance;
  readonly flow: number;
  readonly pressure: number;
}

function flowsAt(machine: Machine, phi: number): Flows {
  const balance = balancedSpeed(machine, phi);
  const tipSpeed = balance.speed * machine.radius;
  const psi = tipSpeed > 0 ? psiAt(machine, phi, tipSpeed) : 0;
  const pressure = 0.5 * machine.air.density * tipSpeed ** 2 * psi;
  return { balance, flow: phi * machine.area * tipSpeed, pressure };
}

/** Leak less rotor flow at the rotor's pressure: above 0 the leak lets through more than the rotor moves. NaN where the rotor stands, or no speed is steady. */
function excessFlow(machine: Machine, leak: Leak, phi: number): number {
  const { speed } = balancedSpeed(machine, phi);
  if (!(speed > 0)) return Number.NaN;
  const tipSpeed = speed * machine.radius;
  const pressure = 0.5 * machine.air.density * tipSpeed ** 2 * psiAt(machine, phi, tipSpeed);
  return leakFlow(leak, machine.air, Math.max(0, pressure)) - phi * machine.area * tipSpeed;
}

function endOfCurve(machine: Machine, excess: (phi: number) => number): number {
  if (Number.isFinite(machine.phiEnd)) return machine.phiEnd;
  let end = machine.rotor.phiMax;
  for (let i = 0; i < MOST_DOUBLINGS; i++) {
    if (excess(end) < 0 || balancedSpeed(machine, end).speed === 0) return end;
    end *= 2;
  }
  throw new NotEnoughDataError(
    "The curve's pressure never falls to what the leak lets through.",
    "Measure the rotor nearer to open, where its pressure is 0.",
    "rotor.psi",
  );
}

/** Narrows a turn (middle nearer to 0 than both ends, all of one sign) until the sign changes or the turn is settled. */
function signChangeAtTurn(f: (x: number) => number, lo: number, hi: number, sign: number): number | null {
  let [a, b] = [lo, hi];
  for (let i = 0; i < TURN_STEPS; i++) {
    const [left, right] = [a + (b - a) / 3, b - (b - a) / 3];
    const [fl, fr] = [sign * f(left), sign * f(right)];
    if (fl < 0) return left;
    if (fr < 0) return right;
    if (fl < fr) b = right;
    else a = left;
  }
  return null;
}

function bracketsOf(f: (x: number) => number, end: number): [number, number][] {
  const xs = Array.from({ length: SCAN + 1 }, (_, i) => (end * i) / SCAN);
  const ys = xs.map(f);
  const brackets: [number, number][] = [];
  for (let i = 1; i <= SCAN; i++) {
    if (ys[i - 1] > 0 !== ys[i] > 0 && !Number.isNaN(ys[i - 1] + ys[i])) brackets.push([xs[i - 1], xs[i]]);
    if (i === SCAN) break;
    const sign = Math.sign(ys[i]);
    const turns = sign * ys[i] < sign * ys[i - 1] && sign * ys[i] < sign * ys[i + 1];
    const turn = turns && ys[i - 1] * ys[i] > 0 && ys[i] * ys[i + 1] > 0;
    const middle = turn ? signChangeAtTurn(f, xs[i - 1], xs[i + 1], sign) : null;
    if (middle !== null) brackets.push([xs[i - 1], middle], [middle, xs[i + 1]]);
  }
  return brackets;
}

function isStable(machine: Machine, leak: Leak, at: Flows, phi: number): boolean {
  const slope = leakSlope(leak, machine.air, at.pressure);
  if (slope === 0) return true;
  const { rotor, air, radius, area, torqueConstant: k, motor } = machine;
  const { speed, windingResistance } = at.balance;
  const tipSpeed = speed * radius;
  const scale = machine.sizeLaw.factor(tipSpeed);
  const [psi, psiSlope] = [rotor.psi, differentiatePolynomial(rotor.psi)].map(
    (c) => scale * evaluatePolynomial(c, phi),
  );
  const [lambda, lambdaSlope] = [rotor.lambda, differentiatePolynomial(rotor.lambda)].map((c) =>
    evaluatePolynomial(c, phi),
  );
  const pressureByFlow = (0.5 * air.density * tipSpeed * psiSlope) / area;
  const pressureBySpeed = 0.5 * air.density * radius * tipSpeed * (2 * psi - phi * psiSlope);
  const load = 0.5 * air.density * area * radius ** 3;
  const torqueBySpeed =
    -(k * k) / (windingResistance + machine.circuitResistance) -
    motor.viscousTorque -
    load * speed * (2 * lambda - phi * lambdaSlope);
  const torqueByFlow = (-load * speed ** 2 * lambdaSlope) / (area * tipSpeed);
  const netByFlow = pressureByFlow - 1 / slope;
  const determinant = torqueBySpeed * netByFlow - torqueByFlow * pressureBySpeed;
  return netByFlow < 0 && torqueBySpeed < 0 && determinant > 0;
}

function crossingAt(machine: Machine, leak: Leak, phi: number): Crossing {
  const at = flowsAt(machine, phi);
  return {
    ...at.balance,
    phi,
    flow: at.flow,
    pressure: at.pressure,
    psi: psiAt(machine, phi, at.balance.speed * machine.radius),
    lambda: evaluatePolynomial(machine.rotor.lambda, phi),
    stable: isStable(machine, leak, at, phi),
  };
}

/**
 * Every operating point of a machine on a leak, by rising flow.
 *
 *     ½ρu²ψ(φ) = Δp_leak(φ·A·u) with u from the balance of torques at φ
 *
 * @param machine - rotor, motor, pack and supply at one state of the air
 * @param leak - what leaks, at the same air
 * @returns crossings: φ, ψ, λ [-], ω [rad/s], Q [m³/s], Δp [Pa], I [A], R_m [Ω], T [K], stable or not; none where the motor does not turn, cold or once its winding has settled
 * @throws {NotEnoughDataError} where ψ has no zero and the leak stays under it
 *
 * Valid on φ from 0 to the first positive zero of ψ. Stable: the leak's line rises more steeply than the rotor's at fixed speed, and the coupled pair returns (dM/dω < 0, determinant > 0). Source: docs/method/operating-point.md
 */
export function operatingPoints(machine: Machine, leak: Leak): Crossing[] {
  if (!overcomesFriction(machine)) return [];
  if (isSealed(leak)) return balancedSpeed(machine, 0).speed === 0 ? [] : [crossingAt(machine, leak, 0)];
  const excess = (phi: number) => excessFlow(machine, leak, phi);
  const end = endOfCurve(machine, excess);
  const roots = bracketsOf(excess, end).map(([lo, hi]) => findRoot(excess, lo, hi).root);
  return [...new Set(roots)].map((phi) => crossingAt(machine, leak, phi)).sort((a, b) => a.flow - b.flow);
}

/** Half-width, relative to φ, in which a neighbouring crossing is looked for. */
const NEAR = 0.25;

/**
 * The crossing next to a known one, after a small change of voltage, air or gap.
 *
 *     as {@link operatingPoints}, between ¾ and 1¼ of φ alone
 *
 * @param machine - rotor, motor, pack and supply at one state of the air
 * @param leak - what leaks, at the same air
 * @param phi - of the crossing before the change [-], ≥ 0
 * @returns the crossing; the operating point of a full scan where none lies so near; null where there is none
 * @throws {NotEnoughDataError} as {@link operatingPoints}
 *
 * Valid for changes that leave one crossing there. Source: docs/method/operating-point.md
 */
export function crossingNear(machine: Machine, leak: Leak, phi: number): Crossing | null {
  if (!overcomesFriction(machine)) return null;
  if (phi > 0 && !isSealed(leak)) {
    const excess = (x: number) => excessFlow(machine, leak, x);
    const [lo, hi] = [phi * (1 - NEAR), Math.min(machine.phiEnd, phi * (1 + NEAR))];
    if (excess(lo) > 0 && excess(hi) < 0) return crossingAt(machine, leak, findRoot(excess, lo, hi).root);
  }
  return operatingPoint(operatingPoints(machine, leak));
}

/** @returns the point a vehicle set down on a surface settles at: the stable crossing of largest flow, null where none is */
export function operatingPoint(points: readonly Crossing[]): Crossing | null {
  return points.findLast((point) => point.stable) ?? null;
}
