import { requireFinite, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { maximumOn } from "../../numeric/polynomial.ts";
import { type Air, airFrom } from "../../physics/air.ts";
import { cosineOfDegrees } from "../../physics/hold/angle.ts";
import { rideHeightOf } from "../../physics/hold/pull.ts";
import { torqueConstant } from "../../physics/motor.ts";
import type { RotorInput } from "../../physics/point/machine.ts";
import { type PropellerLoad, propellerLoad } from "../../physics/point/propellerWarm.ts";
import { sizeConstants, sizeLaw } from "../../physics/point/sizeLaw.ts";
import { type Warming, warmingOf } from "../../physics/winding.ts";
import { type StackSums, stackSumsOf } from "./closing.ts";
import { countCombinations } from "./count.ts";
import { type FittedSkirt, fittedSkirtOf, type Needs, needsOn } from "./fittedSkirt.ts";
import { ductedRotorAt, propellerAt } from "./input.ts";
import { type PackTable, packTable } from "./packTable.ts";
import { type Radix, radixOf } from "./places.ts";
import { type Problem, sizesIn, skirtsIn, type TriedMotor, type TriedRotor } from "./problem.ts";
import { singleCrossing } from "./singleCrossing.ts";
import { type Summed, type Sums, sumsOf } from "./sums.ts";

/** A motor's own numbers of a case. */
export interface PreparedMotor extends Warming {
  readonly torqueConstant: number;
  /** [K/W]; null: taken cold */
  readonly thermalResistance: number | null;
}

/** A rotor at one size. */
export interface SizedRotor {
  readonly psi: readonly number[];
  readonly lambda: readonly number[];
  readonly diameter: number;
  /** as a prediction takes it */
  readonly input: RotorInput;
  /** end of the curve; 0 where one crossing is not proven and every combination is scanned [-] */
  readonly phiEnd: number;
  /** greatest λ on the curve [-] */
  readonly mostLambda: number;
  /** d ln F/d ln u up to which one crossing is proven; infinite where it does not matter [-] */
  readonly mostSizeSlope: number;
  /** a and b in F = a − b·u^−0.2 [-, (m/s)^0.2] */
  readonly sizeMost: number;
  readonly sizeFall: number;
}

/** A question made ready: every table that its combinations share. Built anew in each thread. */
export interface Prepared {
  readonly problem: Problem;
  readonly radix: Radix;
  readonly count: number;
  readonly air: Air;
  /** the running gear gives: margins are judged at each limit's own gap */
  readonly gives: boolean;
  /** cos α/A_out of the exhaust, 0 where none is counted [1/m²] */
  readonly jet: number;
  readonly motors: readonly PreparedMotor[];
  /** those in a duct */
  readonly sizedRotors: readonly SizedRotor[];
  /** each at each size */
  readonly propellers: readonly PropellerLoad[];
  readonly packs: readonly PackTable[];
  /** those that rotors in a duct pull through */
  readonly fittedSkirts: readonly FittedSkirt[];
  /** by fitted skirt, those of propellers behind */
  readonly needs: readonly Needs[];
  readonly sums: Readonly<Record<Summed, Sums>>;
  readonly stacks: readonly StackSums[];
  /** of each sized rotor [rad/s]; NaN: not known */
  readonly burstSpeeds: Float64Array;
}

function preparedMotor(motor: TriedMotor, ambient: number): PreparedMotor {
  requireNonNegative("motor.frictionTorque", motor.frictionTorque);
  requireNonNegative("motor.viscousTorque", motor.viscousTorque);
  return {
    torqueConstant: torqueConstant(motor.kv),
    ...warmingOf(motor, ambient),
    thermalResistance: motor.thermalResistance,
  };
}

function sizedRotorsOf(rotor: TriedRotor, air: Air): SizedRotor[] {
  const single = singleCrossing(rotor.psi, rotor.lambda);
  const phiEnd = single?.phiEnd ?? 0;
  const mostLambda = single ? maximumOn(rotor.lambda, 0, phiEnd).value : 0;
  return rotor.sizes.map(({ diameter }) => {
    requirePositive("rotor.diameter", diameter);
    const [sizeMost, sizeFall] = single
      ? sizeConstants(sizeLaw({ ...rotor, diameter }, phiEnd, air))
      : [1, 0];
    const mostSizeSlope = sizeFall === 0 ? Number.POSITIVE_INFINITY : (single?.mostSizeSlope ?? 0);
    const { psi, lambda } = rotor;
    const input = ductedRotorAt(rotor, diameter);
    return { psi, lambda, diameter, input, phiEnd, mostLambda, mostSizeSlope, sizeMost, sizeFall };
  });
}

function checkFixed(problem: Problem): void {
  const { fixed, duties, motors, packs } = problem;
  requireNonNegative("fixed.height", fixed.height);
  requireFinite("fixed.price", fixed.price);
  requireNonNegative("fixed.supply.driverResistance", fixed.supply.driverResistance);
  requireNonNegative("fixed.supply.auxCurrent", fixed.supply.auxCurrent);
  requirePositive("fixed.vehicle.mass", fixed.vehicle.mass);
  for (const duty of duties)
    if (duty > 1) requireNonNegative("duties", 1 - duty);
    else requireNonNegative("duties", duty);
  for (const part of [...motors, ...packs, ...skirtsIn(problem), ...sizesIn(problem)])
    requireNonNegative("mass", part.mass);
}

/**
 * Makes a question ready to be solved, in any thread.
 *
 *     every motor, sized rotor, pack and fitted skirt (one gap each) once
 *
 * @param problem - the question, SI
 * @returns its tables, SI [-]
 * @throws {NotEnoughDataError} on an empty list of parts to try, a curve that stops short
 * @throws {TooManyCombinationsError} above MOST_COMBINATIONS
 * @throws {OutOfRangeError} with a number that can't be
 *
 * Valid for any question. Source: docs/method/choosing.md
 */
export function prepare(problem: Problem): Prepared {
  const count = countCombinations(problem);
  checkFixed(problem);
  const { vehicle, charge, air: weather } = problem.fixed;
  const air = airFrom(weather);
  const { jetArea, jetAngle } = vehicle;
  const { propellers = [], stands = [] } = problem;
  const fittedSkirts = problem.skirts.flatMap((skirt) =>
    skirt.gaps.map((gap) => fittedSkirtOf(problem, skirt, gap, air)),
  );
  return {
    problem,
    radix: radixOf(problem),
    count,
    air,
    gives: rideHeightOf(vehicle, 0) !== null,
    jet: jetArea === null ? 0 : cosineOfDegrees(jetAngle) / requirePositive("vehicle.jetArea", jetArea),
    motors: problem.motors.map((motor) => preparedMotor(motor, weather.temperature)),
    sizedRotors: problem.rotors.flatMap((rotor) => sizedRotorsOf(rotor, air)),
    propellers: propellers.flatMap((propeller) =>
      propeller.sizes.map(({ diameter }) => propellerLoad(propellerAt(propeller, diameter), air)),
    ),
    packs: problem.packs.map((pack, i) => packTable(pack, charge, `packs.${i}`)),
    sums: {
      mass: sumsOf(problem, "mass"),
      height: sumsOf(problem, "height"),
      price: sumsOf(problem, "price"),
    },
    stacks: stackSumsOf(problem),
    burstSpeeds: Float64Array.from(
      problem.rotors.flatMap(({ sizes }) => sizes),
      ({ burstSpeed }) => burstSpeed ?? Number.NaN,
    ),
    fittedSkirts,
    needs: [...fittedSkirts, ...stands.map((stand) => needsOn(problem, stand))],
  };
}
