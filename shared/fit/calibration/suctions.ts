import { chebyshevInterpolant } from "../../numeric/chebyshevInterpolant.ts";
import { findRoot } from "../../numeric/root.ts";
import type { Air } from "../../physics/air.ts";
import { type Assembly, assemble, suctionAt } from "../../physics/assembly.ts";
import { crossingNear } from "../../physics/operatingPoint.ts";
import { type Machine, overcomesFriction, psiAt } from "../../physics/point/machine.ts";
import { balancedSpeed } from "../../physics/point/speed.ts";
import type { PredictInput } from "../../physics/predict.ts";
import { isSealed, type Leak, leakFlow } from "../../physics/restriction/leak.ts";
import { skirtLeak } from "../../physics/skirt.ts";

/** Greatest miss of the speed between the places where the torques were balanced [-]. */
const SPEED_TOLERANCE = 1e-11;
/** Places along the curve at which crossings at the widest gap are looked for. */
const SCAN = 96;
/** A step of the secant below this share of φ ends it: the next would be its square. */
const SETTLED = 1e-8;
const MOST_STEPS = 12;
/** First step beside the guess, as a share of φ. */
const BESIDE = 1e-4;

function assembledAt(input: PredictInput, gap: number): Assembly & { readonly at: PredictInput } {
  const at = { ...input, skirt: { ...input.skirt, gap } };
  return { at, ...assemble(at) };
}

/**
 * Pull at each of many gaps: every operating point by its own balance of torques.
 *
 *     from the widest gap down: there the crossing of largest flow, where a vehicle set down settles, only moves or falls
 *
 * @param input - the rig as a build, all SI, its gap aside
 * @param gaps - by rising width [m], ≥ 0
 * @returns F_s at each [N], 0 where the motor does not turn
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as {@link crossingNear}
 */
export function solvedSuctions(input: PredictInput, gaps: readonly number[]): number[] {
  let phi = 0;
  const falling = gaps.toReversed().map((gap) => {
    const assembly = assembledAt(input, gap);
    const crossing = crossingNear(assembly.machine, assembly.leak, phi);
    phi = crossing?.phi ?? 0;
    return crossing ? suctionAt(assembly.at, assembly, crossing.pressure, crossing.flow) : 0;
  });
  return falling.reverse();
}

/** What the rotor does along its curve, whatever the gap: speed is balanced at a few φ and interpolated. */
interface Curve {
  readonly end: number;
  readonly at: (phi: number) => { readonly pressure: number; readonly flow: number };
}

function curveOf(machine: Machine): Curve | null {
  const { phiEnd: end, radius, area, air } = machine;
  if (!Number.isFinite(end) || !overcomesFriction(machine)) return null;
  const speed = chebyshevInterpolant((phi) => balancedSpeed(machine, phi).speed, 0, end, SPEED_TOLERANCE);
  if (!speed || !(speed(0) > 0) || !(speed(end) > 0)) return null;
  const at = (phi: number) => {
    const tipSpeed = speed(phi) * radius;
    const pressure = Math.max(0, 0.5 * air.density * tipSpeed ** 2 * psiAt(machine, phi, tipSpeed));
    return { pressure, flow: phi * area * tipSpeed };
  };
  return { end, at };
}

const excessOf = (curve: Curve, leak: Leak, air: Air) => (phi: number) => {
  const { pressure, flow } = curve.at(phi);
  return leakFlow(leak, air, pressure) - flow;
};

/** The crossing at the widest gap, if it is the only one there and stable. */
function startOf({ machine, leak, air }: Assembly, curve: Curve): number | null {
  const excess = excessOf(curve, leak, air);
  const phis = Array.from({ length: SCAN + 1 }, (_, i) => (curve.end * i) / SCAN);
  const signs = phis.map((phi) => excess(phi) > 0);
  const turns = signs.flatMap((above, i) => (i > 0 && above !== signs[i - 1] ? [i] : []));
  if (turns.length !== 1 || !signs[0]) return null;
  const { root } = findRoot(excess, phis[turns[0] - 1], phis[turns[0]]);
  return crossingNear(machine, leak, root)?.stable ? root : null;
}

/** Secant from a guess; null where it does not settle between 0 and the crossing at the gap before. */
function secant(excess: (phi: number) => number, guess: number, most: number): number | null {
  let [before, phi] = [guess * (1 + BESIDE), guess];
  let valueBefore = excess(before);
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const value = excess(phi);
    if (value === 0 || Math.abs(phi - before) <= SETTLED * phi) return phi;
    const next = phi - (value * (phi - before)) / (value - valueBefore);
    if (!(next > 0 && next <= most)) return null;
    [before, valueBefore, phi] = [phi, value, next];
  }
  return null;
}

/** Where a parabola through the last three crossings leads, or a line, or the last itself. */
function ahead(known: readonly number[]): number {
  const [c = 0, b = c, a = 2 * b - c] = known.toReversed();
  return Math.max(c / 2, 3 * c - 3 * b + a);
}

/** φ at each gap, from the widest down; null where the branch can't be followed. */
function traced(curve: Curve, first: number, leaks: readonly Leak[], air: Air): number[] | null {
  const phis = [first];
  for (const leak of leaks.slice(1)) {
    const most = phis[phis.length - 1];
    const phi = isSealed(leak) ? 0 : secant(excessOf(curve, leak, air), ahead(phis.slice(-3)), most);
    if (phi === null) return null;
    phis.push(phi);
  }
  return phis;
}

/**
 * As {@link solvedSuctions}, at a tenth of its cost: the torques are balanced at a few φ, and the speed between them interpolated.
 *
 *     ω(φ) through Chebyshev places, off by 1e-11 at most;  Q_leak(h, Δp(φ)) = φ·A·u(φ) by secant from the gap before
 *
 * @param input - the rig as a build, all SI, its gap aside
 * @param gaps - by rising width [m], ≥ 0, two or more
 * @returns F_s at each [N]; null where the speed is too rough, or the crossing at the widest gap is not one alone and stable, or can't be followed: then solve
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid as {@link solvedSuctions}, to about 1e-8 of F_s. Source: docs/method/calibration.md
 */
export function tracedSuctions(input: PredictInput, gaps: readonly number[]): number[] | null {
  const falling = gaps.toReversed();
  const widest = assembledAt(input, falling[0]);
  const { air } = widest;
  const curve = curveOf(widest.machine);
  const first = curve && !isSealed(widest.leak) ? startOf(widest, curve) : null;
  if (!curve || first === null) return null;
  const leaks = falling.map((gap) => skirtLeak({ ...input.skirt, gap }, air));
  const phis = traced(curve, first, leaks, air);
  if (!phis) return null;
  const suctions = phis.map((phi, i) => {
    const { pressure, flow } = curve.at(phi);
    return suctionAt(input, { leak: leaks[i], air }, pressure, flow);
  });
  return suctions.reverse();
}
