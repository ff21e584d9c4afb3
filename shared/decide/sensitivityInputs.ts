import { airFrom } from "../physics/air.ts";
import type { PredictInput } from "../physics/predict.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import { leakNumbers } from "../physics/skirt.ts";
import { limitsOf } from "./physicalLimits.ts";

/** A number of a build, or the height of a whole curve, that can be turned by a factor. */
export interface Turnable {
  /** "skirt.gap"; "rotor.psi" for the whole curve */
  readonly path: string;
  /** SI; 1 for a curve */
  readonly value: number;
  /** most that it can be multiplied by and still be */
  readonly mostFactor: number;
  /** the build with it multiplied; unchanged parts are the same objects */
  readonly times: (factor: number) => AnyPredictInput;
}

/** Numbers that are asked about, where the build has them; those of the leak come from its own list. Places along the vehicle are not: their zero is anyone's choice. */
const NUMBERS = [
  "skirt.area",
  "skirt.perimeter",
  "skirt.land",
  "rotor.diameter",
  "motor.kv",
  "motor.resistance",
  "motor.thermalResistance",
  "motor.frictionTorque",
  "motor.viscousTorque",
  "pack.openCircuitVoltage",
  "pack.cellResistance",
  "pack.wireResistance",
  "supply.duty",
  "supply.driverResistance",
  "supply.auxCurrent",
  "vehicle.mass",
  "vehicle.pullFactor",
  "vehicle.verticalStiffness",
  "vehicle.gapLoad",
  "vehicle.wheelFriction",
  "vehicle.skirtFriction",
  "vehicle.skirtShare",
  "vehicle.rollingResistance",
  "vehicle.cgHeight",
  "vehicle.track",
  "air.pressure",
  "air.temperature",
];
/** Curves that are turned as a whole. */
const CURVES = ["rotor.psi", "rotor.lambda", "rotor.thrust", "rotor.power"];

type Node = Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

function valueAt(build: AnyPredictInput, keys: readonly string[]): unknown {
  return keys.reduce<unknown>((node, key) => (isNode(node) ? node[key] : undefined), build);
}

function withValue(node: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(node)) return node.with(Number(key), withValue(node[Number(key)], rest, value));
  return isNode(node) ? { ...node, [key]: withValue(node[key], rest, value) } : node;
}

function numberAt(build: AnyPredictInput, path: string): Turnable[] {
  const keys = path.split(".");
  const value = valueAt(build, keys);
  if (typeof value !== "number") return [];
  const mostFactor = value > 0 ? limitsOf(path)[1] / value : Number.POSITIVE_INFINITY;
  return [
    { path, value, mostFactor, times: (factor) => withValue(build, keys, value * factor) as AnyPredictInput },
  ];
}

function curveAt(build: AnyPredictInput, path: string): Turnable[] {
  const keys = path.split(".");
  const curve = valueAt(build, keys);
  if (!Array.isArray(curve)) return [];
  const turned = (factor: number) => curve.map((coefficient: number) => coefficient * factor);
  const times = (factor: number) => withValue(build, keys, turned(factor)) as AnyPredictInput;
  return [{ path, value: 1, mostFactor: Number.POSITIVE_INFINITY, times }];
}

/**
 * The numbers of a build that its margin is asked about.
 *
 *     single numbers by path; ψ, λ, C_T and C_P as whole curves
 *
 * @param build - of either kind, all SI [-]
 * @returns each number with its value [SI] and the build with it multiplied; 0 included
 *
 * Valid for any build. Source: docs/method/sensitivities.md
 */
export function turnableInputs(build: AnyPredictInput): Turnable[] {
  const { skirt } = build as Partial<PredictInput>;
  const ofLeak = skirt ? leakNumbers(skirt, airFrom(build.air)) : [];
  return [
    ...[...new Set([...ofLeak, ...NUMBERS])].flatMap((path) => numberAt(build, path)),
    ...CURVES.flatMap((path) => curveAt(build, path)),
  ];
}
