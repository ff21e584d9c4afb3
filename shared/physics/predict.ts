import { airNotes } from "./air.ts";
import { type Assembly, assemble, type PredictInput, suctionAt } from "./assembly.ts";
import { compressibilityNotes } from "./fanlaws/notes.ts";
import { type GivingHold, holdUnder, worstUnder } from "./hold/holdUnder.ts";
import { compileHold } from "./hold/law.ts";
import { pullOf, rideHeightOf } from "./hold/pull.ts";
import { vehicleNotes } from "./hold/vehicle.ts";
import type { Worst } from "./hold/worst.ts";
import { RPM } from "./motor.ts";
import type { Note } from "./note.ts";
import { type Crossing, operatingPoint, operatingPoints } from "./operatingPoint.ts";
import { packCurrent, packVoltage } from "./pack.ts";
import type { Machine } from "./point/machine.ts";
import { pointNotes } from "./point/notes.ts";
import { suctionByGap } from "./pullByGap.ts";
import { leakNotes } from "./restriction/leak.ts";
import type { SkirtInput } from "./skirt.ts";

export type { PredictInput, VehicleInput } from "./assembly.ts";

export interface Point {
  readonly speed: number;
  readonly rpm: number;
  readonly flow: number;
  readonly pressure: number;
  readonly phi: number;
  readonly psi: number;
  readonly lambda: number;
  readonly shaftPower: number;
  readonly motorCurrent: number;
  readonly packCurrent: number;
  readonly packVoltage: number;
  readonly windingTemperature: number;
  readonly extrapolated: boolean;
}

export type Attitude = Omit<GivingHold, "required">;

export interface Prediction {
  readonly air: { readonly density: number; readonly viscosity: number; readonly soundSpeed: number };
  readonly point: Point | null;
  readonly points: readonly (Point & { readonly stable: boolean })[];
  readonly suction: number;
  readonly attitudes: readonly Attitude[];
  readonly worst: Worst;
  readonly warnings: readonly Note[];
}

/** Floor, wall and ceiling: the attitudes that are always answered for [°]. */
export const STANDARD_ANGLES = [0, 90, 180] as const;

function pointOf(machine: Machine, crossing: Crossing): Point {
  const { speed, flow, pressure, phi, psi, lambda, current, windingTemperature } = crossing;
  const { rotor, air, area, radius, supply } = machine;
  const circuit = {
    ...supply,
    openCircuitVoltage: machine.openCircuitVoltage,
    packResistance: machine.packResistance,
  };
  return {
    speed,
    rpm: speed / RPM,
    flow,
    pressure,
    phi,
    psi,
    lambda,
    shaftPower: 0.5 * air.density * area * (speed * radius) ** 3 * lambda,
    motorCurrent: current,
    packCurrent: packCurrent(circuit, current),
    packVoltage: packVoltage(circuit, current),
    windingTemperature,
    extrapolated: phi < rotor.phiMin || phi > rotor.phiMax,
  };
}

function withoutRequired({ required: _required, ...attitude }: GivingHold): Attitude {
  return attitude;
}

/** Where a mode that governs is judged with the skirt on the surface. */
function touchNotes({ gap }: SkirtInput, attitudes: readonly Attitude[]): Note[] {
  if (gap === 0) return [];
  const touching = attitudes.filter(({ gaps, parked, driving }) =>
    [...parked.governs, ...driving.governs].some((mode) => gaps?.[mode] === 0),
  );
  if (touching.length === 0) return [];
  const angles = touching.map(({ angle }) => `${angle.toFixed(0)}°`).join(", ");
  const message = `At the limit on ${angles} the running gear has given until the skirt touches the surface: it wears there, and drags more than its share says.`;
  return [{ code: "skirt-touches", message }];
}

/** How a build pulls at one state. */
interface Pulling {
  readonly assembly: Assembly;
  readonly crossings: readonly Crossing[];
  readonly point: Crossing | null;
  /** F_s with the gap as set, jet included; below 0 where the jet pushes off [N] */
  readonly suction: number;
  /** F_s at another stand-off [m] → [N] */
  readonly byGap: (gap: number) => number;
}

function pullingOf(input: PredictInput): Pulling {
  const assembly = assemble(input);
  const crossings = operatingPoints(assembly.machine, assembly.leak);
  const point = operatingPoint(crossings);
  const suction = point ? suctionAt(input, assembly, point.pressure, point.flow) : 0;
  return { assembly, crossings, point, suction, byGap: suctionByGap(input, assembly, point) };
}

/**
 * What pulls a build, without what it holds: for many builds of which one margin is asked.
 *
 *     the same operating point and F_s as {@link predict}
 *
 * @param input - as {@link predict} takes it, SI
 * @returns the point that it settles at; F_s with the gap as set [N], and by stand-off [m] → [N]
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link predict}
 *
 * Valid and source: as {@link predict}
 */
export function pulledBy(
  input: PredictInput,
): Pick<Pulling, "suction" | "byGap"> & { readonly point: Point | null } {
  const { assembly, point, suction, byGap } = pullingOf(input);
  return { point: point && pointOf(assembly.machine, point), suction, byGap };
}

/**
 * What a build does at one state: operating point, pull, and what it holds at every attitude.
 *
 *     air → leak and rotor → crossing → F_s → margins
 *
 * @param input - weather [K, Pa, -], rotor, motor, pack, supply, skirt, vehicle, all SI (kv in rpm/V)
 * @param angles - attitudes to answer for, floor, wall and ceiling unless given [°]
 * @returns air, the point a vehicle set down settles at (null: the motor does not turn), every crossing, suction [N], margins, worst angles [°], warnings
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid for steady state. Source: docs/method/operating-point.md, holding.md
 *
 * @example
 * const { input } = resolveBuild(book, book.builds[0].data);
 * const { point, suction, attitudes } = predict(input, [90, 180]);
 * point.rpm / 1000; // → 28.2
 * suction; // → 14.5
 * attitudes[1].parked.margin; // → 2.55
 */
export function predict(input: PredictInput, angles: readonly number[] = STANDARD_ANGLES): Prediction {
  const { assembly, crossings, point, suction, byGap } = pullingOf(input);
  const { machine, leak, air } = assembly;
  const law = compileHold(input.vehicle);
  const pull = pullOf(suction, rideHeightOf(input.vehicle, input.skirt.gap), byGap);
  const ofCrossing = (crossing: Crossing) => suctionAt(input, assembly, crossing.pressure, crossing.flow);
  const attitudes = angles.map((angle) => withoutRequired(holdUnder(law, pull, angle)));
  return {
    air: { density: air.density, viscosity: air.viscosity, soundSpeed: air.soundSpeed },
    point: point && pointOf(machine, point),
    points: crossings.map((crossing) => ({ ...pointOf(machine, crossing), stable: crossing.stable })),
    suction,
    attitudes,
    worst: worstUnder(law, pull),
    warnings: [
      ...airNotes(input.air),
      ...machine.sizeLaw.notes,
      ...pointNotes(machine, crossings, point, suction, ofCrossing),
      ...(point ? leakNotes(leak, air, point.pressure) : []),
      ...(point ? compressibilityNotes(point.pressure, point.speed * machine.radius, air.soundSpeed) : []),
      ...vehicleNotes(input.vehicle),
      ...touchNotes(input.skirt, attitudes),
    ],
  };
}
