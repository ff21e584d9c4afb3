import { NoConvergenceError, NotEnoughDataError, OutOfRangeError } from "../../numeric/errors.ts";
import { assemble } from "../../physics/assembly.ts";
import { resistanceVaries } from "../../physics/cells/cell.ts";
import { rigidPull } from "../../physics/hold/pull.ts";
import { soleTurning, type Turning, turningForThrust } from "../../physics/point/turning.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { leakFlow } from "../../physics/restriction/leak.ts";
import { keepingOf } from "../../physics/rundown/kept.ts";
import { keptTime } from "../../physics/rundown/keptTime.ts";
import { keptTimeVarying } from "../../physics/rundown/keptTimeVarying.ts";
import type { KeptState } from "../../physics/rundown/throttled.ts";
import { suctionFor } from "../size/duty.ts";
import { pullForHold } from "../size/need.ts";
import { wantedMargin } from "../wanted.ts";
import { isHelpless } from "./holdNeeds.ts";
import { inputOf, propellerAt } from "./input.ts";
import { type Digits, isOpen, placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { isProvenAt } from "./solveCombination.ts";
import { sumAt } from "./sums.ts";

/** Places of a combination's parts. */
type Of = Omit<Digits, "duty">;

/** A controller's build of a combination, whatever the combination's own throttle: it goes up to full. */
function keptInput({ problem, radix }: Prepared, index: number): AnyPredictInput {
  const input = inputOf(problem, placesOf(radix, index));
  return { ...input, supply: { ...input.supply, duty: 1 } };
}

/** Where the worst angle depends on the pull: as a run-down is asked for it, attitude by attitude. */
function pullByAttitude(prepared: Prepared, index: number): number {
  const { vehicle } = keptInput(prepared, index);
  const { attitudes, targetMargin: margin } = prepared.problem.wants;
  const needing = attitudes.filter(({ angle, mode }) => {
    const alone = wantedMargin(vehicle, rigidPull(0), { attitude: angle, mode });
    return alone < Number.POSITIVE_INFINITY;
  });
  return Math.max(0, ...needing.map(({ angle, mode }) => pullForHold(vehicle, { angle, mode, margin })));
}

/** The pull that the hardest wanted attitude asks for at the target margin [N]; 0 where none needs any, infinite where none suffices. */
function pullToKeep(prepared: Prepared, of: Of, index: number): number {
  const { parked, driving } = prepared.needs[of.fittedSkirt];
  if (parked.moving || driving.moving) return pullByAttitude(prepared, index);
  const mass = sumAt(prepared.sums.mass, of);
  const pull = prepared.problem.wants.targetMargin * mass * Math.max(parked.perMass, driving.perMass);
  const never = isHelpless(parked, mass, pull) || isHelpless(driving, mass, pull);
  return never ? Number.POSITIVE_INFINITY : pull;
}

function ductedTurning(prepared: Prepared, of: Of, index: number, pull: number): Turning {
  const { air, problem } = prepared;
  const { skirt, leak, pullFactor } = prepared.fittedSkirts[of.fittedSkirt];
  const { jetArea, jetAngle } = problem.fixed.vehicle;
  const pressure = suctionFor({ skirt, vehicle: { jetArea, jetAngle, pullFactor }, leak, air }, pull);
  const rotor = prepared.sizedRotors[of.sizedRotor];
  if (rotor.phiEnd > 0) {
    const duty = { pressure, flow: leakFlow(leak, air, pressure) };
    const turning = soleTurning(rotor.input, air, duty, rotor.phiEnd);
    if (isProvenAt(rotor, turning.phi, (turning.speed * rotor.diameter) / 2)) return turning;
  }
  const input = keptInput(prepared, index);
  if (!("skirt" in input)) throw new RangeError(`combination ${index} has a rotor in a duct and no skirt`);
  return keepingOf(input, assemble(input), pressure).keeping;
}

function turningOf(prepared: Prepared, of: Of, index: number, pull: number): Turning {
  const { problem, radix, air } = prepared;
  if (!isOpen(radix, of.sizedRotor)) return ductedTurning(prepared, of, index, pull);
  const { outer, inner } = radix.sizedRotors[of.sizedRotor];
  const propeller = (problem.propellers ?? [])[outer];
  return turningForThrust(propellerAt(propeller, propeller.sizes[inner].diameter), air, pull);
}

/** What turns it: current with the motor's own friction, the winding settled in its heat; null where it settles nowhere. */
function stateOf({ motors, problem }: Prepared, { motor }: Of, { speed, torque }: Turning): KeptState | null {
  const { frictionTorque, viscousTorque } = problem.motors[motor];
  const { torqueConstant, winding, heating } = motors[motor];
  const current = (torque + frictionTorque + viscousTorque * speed) / torqueConstant;
  const cool = 1 - heating * current * current;
  return cool > 0 ? { current, speed, windingResistance: winding / cool } : null;
}

/** How the rotor turns that keeps the margin; what it is kept for where nothing need turn, or nothing does it [s]. */
function turningToKeep(prepared: Prepared, of: Of, index: number): Turning | number {
  try {
    const pull = pullToKeep(prepared, of, index);
    if (pull === 0) return Number.POSITIVE_INFINITY;
    return pull === Number.POSITIVE_INFINITY ? 0 : turningOf(prepared, of, index, pull);
  } catch (error) {
    if (error instanceof OutOfRangeError || error instanceof NoConvergenceError) return 0;
    if (error instanceof NotEnoughDataError) return Number.NaN;
    throw error;
  }
}

/**
 * How long a controller keeps a combination's wanted margin, from the charge on, its winding settled.
 *
 *     F = margin·F_required of the hardest wanted attitude, Δp from F_s(Δp) = F, ω and I as a run-down keeps them, then {@link keptTime}
 *
 * @param prepared - the question
 * @param of - digits of the combination [-]
 * @param index - of the combination [-]
 * @returns time [s]: to the end of the charge, or to where even full throttle is too little; 0 where it is from the start, or no pull suffices; infinite where none is needed; NaN where what it draws isn't known
 *
 * Valid as a run-down that keeps it, the gap as set; the set's own throttle plays no part. Source: docs/method/choosing.md
 */
export function keptTimeOf(prepared: Prepared, of: Of, index: number): number {
  const turning = turningToKeep(prepared, of, index);
  if (typeof turning === "number") return turning;
  const state = stateOf(prepared, of, turning);
  if (!state) return 0;
  // Driven by the air, it would charge the pack: its coefficients aren't known there.
  if (!(state.current > 0)) return Number.NaN;
  const { problem, packs, motors } = prepared;
  const { resistance: packResistance, pieces } = packs[of.pack];
  const { supply } = problem.fixed;
  const circuit = { packResistance, supply, torqueConstant: motors[of.motor].torqueConstant };
  const load = { circuit, state, pack: problem.packs[of.pack] };
  if (resistanceVaries(load.pack.cell)) return keptTimeVarying(load, problem.fixed.charge);
  return keptTime(pieces, load);
}
