import { OutOfRangeError } from "../../numeric/errors.ts";
import { cellResistance } from "../../physics/cells/cell.ts";
import { openCircuitCurve } from "../../physics/pack.ts";
import type { PredictInput } from "../../physics/predict.ts";
import { isPropeller } from "../../physics/predictAny.ts";
import type { PropellerInput } from "../../physics/propellerLaw.ts";
import type {
  Problem,
  TriedMotor,
  TriedPack,
  TriedPropeller,
  TriedRotor,
  TriedSkirt,
  TriedStand,
} from "../choose/problem.ts";
import { ductedRotorAt, keysOf, type MapBuild, type MapKey, rotorAt, wound } from "./place.ts";

/** One axis: a setting and its values, rising. */
export interface MapAxis {
  readonly key: MapKey;
  readonly values: readonly number[];
}

/** What is mapped over which two settings. */
export interface MapQuestion {
  readonly of: MapBuild;
  readonly x: MapAxis;
  readonly y: MapAxis;
  /** the run's time is wanted too, which takes longer */
  readonly timed: boolean;
}

/** Of the lightest vehicle: what is left to the motor's place in the sum of masses. */
const HALF = 0.5;
/** Points into which a cell's curve is cut again where its charge is an axis. */
const CUTS = 64;

function valuesOf({ x, y }: MapQuestion, key: MapKey, own: number): readonly number[] {
  if (x.key === key) return x.values;
  return y.key === key ? y.values : [own];
}

function motorsOf(question: MapQuestion, rest: number): TriedMotor[] {
  const { of } = question;
  const { motor, vehicle } = of.input;
  return valuesOf(question, "kv", motor.kv).flatMap((kv) =>
    valuesOf(question, "mass", vehicle.mass).map((mass) => ({
      ...wound(of.input, kv),
      id: "motor",
      mass: mass - rest,
    })),
  );
}

/** What nothing but a search says of a family. */
const UNTESTED = { id: "rotor", basis: "measured", testedDiameters: [], testedTipSpeeds: null } as const;

/** Neighbours that are corrected from one tested size stand together; the order of the diameters is kept. */
function rotorsOf(question: MapQuestion, input: PredictInput): TriedRotor[] {
  const { of } = question;
  const { rotor } = input;
  const groups: { key: string; rotor: TriedRotor }[] = [];
  for (const diameter of valuesOf(question, "diameter", rotor.diameter)) {
    const there = ductedRotorAt(of, rotor, diameter);
    const key = JSON.stringify(there.sizeCorrection);
    const size = { diameter, mass: 0, burstSpeed: rotorAt(of, diameter).burstSpeed };
    const last = groups.at(-1);
    if (last?.key === key) (last.rotor.sizes as (typeof size)[]).push(size);
    else groups.push({ key, rotor: { ...there, ...UNTESTED, sizes: [size] } });
  }
  return groups.map((group) => group.rotor);
}

function propellerOf(question: MapQuestion, rotor: PropellerInput): TriedPropeller {
  const { thrust, power, referenceReynolds, testedReynolds, chord, diameter: own } = rotor;
  const law = { thrust, power, referenceReynolds, testedReynolds, chordRatio: chord / own };
  const sizes = valuesOf(question, "diameter", own).map((diameter) => ({ diameter, mass: 0 }));
  return { ...law, ...UNTESTED, sizes };
}

/** A cell that is full where another stands at a charge: V'(s) = V(z·s), R'(s) = R(z·s), C' = z·C. */
function cellFrom({ cell }: MapBuild, charge: number): MapBuild["cell"] {
  if (charge === 1) return cell;
  const curve = openCircuitCurve(cell.curve);
  const cut = Array.from({ length: CUTS + 1 }, (_, i) => [i / CUTS, curve((charge * i) / CUTS)] as const);
  const below = (cell.resistanceCurve ?? []).filter(([z]) => z < charge);
  const resistanceCurve = [
    ...below.map(([z, resistance]) => [z / charge, resistance] as const),
    [1, cellResistance(cell, charge)] as const,
  ];
  return { ...cell, capacity: cell.capacity * charge, curve: cut, resistanceCurve };
}

function packsOf(question: MapQuestion): TriedPack[] {
  const { of } = question;
  const { series: own, parallel, wireResistance } = of.input.pack;
  return valuesOf(question, "series", own).flatMap((series) =>
    valuesOf(question, "charge", of.charge).map((charge) => ({
      id: "pack",
      mass: 0,
      series,
      parallel,
      wireResistance,
      cell: cellFrom(of, charge),
    })),
  );
}

function standsOf(question: MapQuestion): TriedStand[] {
  const { skirtShare: share, skirtFriction, wheelFriction: own } = question.of.input.vehicle;
  return valuesOf(question, "wheelFriction", own).map((wheelFriction) => ({
    id: null,
    mass: 0,
    share,
    skirtFriction,
    wheelFriction,
  }));
}

function skirtsOf(question: MapQuestion, { skirt, vehicle }: PredictInput): TriedSkirt[] {
  const gaps = valuesOf(question, "gap", skirt.gap);
  const { gap: _each, ...rest } = skirt;
  const { skirtShare: share, skirtFriction, pullFactor } = vehicle;
  return valuesOf(question, "wheelFriction", vehicle.wheelFriction).map((wheelFriction) => ({
    ...rest,
    measuredLeak: gaps.length > 1 ? null : rest.measuredLeak,
    id: "skirt",
    mass: 0,
    share,
    skirtFriction,
    wheelFriction,
    pullFactor,
    gaps,
  }));
}

/** @throws {OutOfRangeError} on two axes of one setting, one that moves nothing, or one of fewer than two values */
export function checkAxes({ of, x, y }: MapQuestion): void {
  for (const { key } of [x, y])
    if (!keysOf(of).includes(key))
      throw new OutOfRangeError(`map.${key}`, Number.NaN, "a setting that moves the build");
  if (x.key === y.key) throw new OutOfRangeError("map.y", Number.NaN, `another setting than ${x.key}`);
  for (const { key, values } of [x, y])
    if (values.length < 2) throw new OutOfRangeError(`map.${key}`, values.length, "two values or more");
}

/**
 * A map as a question to the search's engine: every point a combination.
 *
 *     K_v and mass among the motors, diameters among the rotors, cells and charge among the packs, friction and gap among the skirts
 *
 * @param question - the build and two axes [SI]
 * @returns the question in plain numbers, SI
 * @throws {OutOfRangeError} on a diameter or a cell that can't be
 *
 * Valid for rotors of both kinds. Source: docs/method/map.md
 */
export function mapProblem(question: MapQuestion): Problem {
  const { of, timed } = question;
  const { input } = of;
  const { air, vehicle, supply } = input;
  const rest = HALF * Math.min(...valuesOf(question, "mass", vehicle.mass));
  const { duty, ...wiring } = supply;
  return {
    fixed: { air, vehicle: { ...vehicle, mass: rest }, supply: wiring, charge: 1, height: 0, price: 0 },
    motors: motorsOf(question, rest),
    packs: packsOf(question),
    ...(isPropeller(input)
      ? {
          rotors: [],
          skirts: [],
          propellers: [propellerOf(question, input.rotor)],
          stands: standsOf(question),
        }
      : { rotors: rotorsOf(question, input), skirts: skirtsOf(question, input) }),
    duties: valuesOf(question, "duty", duty),
    wants: {
      attitudes: of.attitudes,
      targetMargin: Number.NEGATIVE_INFINITY,
      ratings: false,
      untimed: !timed,
    },
  };
}

/** Place of each setting in the order in which an index counts them, the last one fastest. */
const COUNTED: Readonly<Record<MapKey, number>> = {
  kv: 0,
  mass: 1,
  diameter: 2,
  series: 3,
  charge: 4,
  duty: 5,
  wheelFriction: 6,
  gap: 7,
};

/**
 * Where a combination of a map lies on it.
 *
 *     of the two axes the one that is counted first runs slowest
 *
 * @param question - two axes [SI]
 * @returns function from a combination's index to row·columns + column [-]
 *
 * Valid for {@link mapProblem}
 */
export function cellOf({ x, y }: MapQuestion): (index: number) => number {
  const [columns, rows] = [x.values.length, y.values.length];
  if (COUNTED[y.key] < COUNTED[x.key]) return (index) => index;
  return (index) => (index % rows) * columns + Math.floor(index / rows);
}
