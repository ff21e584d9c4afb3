import { clearanceAt } from "./closing.ts";
import { FLAG } from "./columns.ts";
import { isOpen } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { type Broken, LIMITS, type Limit } from "./result.ts";
import { sumAt } from "./sums.ts";

/** Place of each limit, and its bit in a combination's mask. */
export const PLACE = Object.fromEntries(LIMITS.map((limit, i) => [limit, i])) as Readonly<
  Record<Limit, number>
>;

/** Whether a combination must have as much of a limit or more; of the others as much or less. */
const AT_LEAST: Readonly<Record<Limit, boolean>> = {
  point: true,
  parked: true,
  driving: true,
  crossing: true,
  windingTemperature: false,
  rotorFactor: true,
  motorCurrent: false,
  motorVoltage: false,
  cellCurrent: false,
  height: false,
  clearance: true,
  price: false,
  time: true,
  keptTime: true,
};
/** By place. */
export const IS_LEAST: readonly boolean[] = LIMITS.map((limit) => AT_LEAST[limit]);

/** What a combination is judged by: stored numbers and its digits. */
export interface Judged {
  readonly motor: number;
  readonly sizedRotor: number;
  readonly pack: number;
  readonly duty: number;
  readonly fittedSkirt: number;
  readonly flags: number;
  readonly speed: number;
  readonly parked: number;
  readonly driving: number;
  readonly crossing: number;
  readonly windingTemperature: number;
  readonly packCurrent: number;
  readonly time: number;
  readonly keptTime: number;
}

const known = (value: number | null | undefined): number => value ?? Number.POSITIVE_INFINITY;

/**
 * Allowed values that do not depend on a combination's solution; infinite where nothing is asked.
 *
 *     the smaller of the wanted one and, where ratings are kept, the maker's
 *
 * @param prepared - the question
 * @param motor - place of the motor [-]
 * @param pack - place of the pack [-]
 * @param allowed - written, by place of LIMITS [SI]
 * @returns nothing
 *
 * Valid for any combination. Source: definition
 */
export function writeAllowed(
  { problem }: Prepared,
  motor: number,
  pack: number,
  allowed: Float64Array,
): void {
  const { wants, motors, packs } = problem;
  const { windingLimit, maxCurrent, ratedVoltage } = motors[motor];
  const kept = wants.ratings === true;
  const target = (mode: "parked" | "driving") =>
    wants.attitudes.some((attitude) => attitude.mode === mode)
      ? wants.targetMargin
      : Number.NEGATIVE_INFINITY;
  allowed[PLACE.point] = 1;
  allowed[PLACE.parked] = target("parked");
  allowed[PLACE.driving] = target("driving");
  allowed[PLACE.crossing] = wants.leastCrossing ?? Number.NEGATIVE_INFINITY;
  allowed[PLACE.windingTemperature] = Math.min(
    known(wants.mostWinding),
    kept ? known(windingLimit) : Number.POSITIVE_INFINITY,
  );
  allowed[PLACE.rotorFactor] = wants.leastRotorFactor ?? Number.NEGATIVE_INFINITY;
  allowed[PLACE.motorCurrent] = kept ? known(maxCurrent) : Number.POSITIVE_INFINITY;
  allowed[PLACE.motorVoltage] = kept ? known(ratedVoltage) : Number.POSITIVE_INFINITY;
  allowed[PLACE.cellCurrent] = kept ? known(packs[pack].cell.maxCurrent) : Number.POSITIVE_INFINITY;
  allowed[PLACE.height] = known(wants.mostHeight);
  allowed[PLACE.clearance] = wants.closes === true ? 0 : Number.NEGATIVE_INFINITY;
  allowed[PLACE.price] = known(wants.mostPrice);
  allowed[PLACE.time] = wants.leastTime ?? Number.NEGATIVE_INFINITY;
  allowed[PLACE.keptTime] = wants.leastKeptTime ?? Number.NEGATIVE_INFINITY;
}

/** @returns whether anything is asked of a combination but that it has an operating point, and of its times */
export function isLimited(allowed: Float64Array): boolean {
  for (let place = 0; place < PLACE.time; place++)
    if (place !== PLACE.point && Number.isFinite(allowed[place])) return true;
  return false;
}

/** @returns burst speed over speed [-]; NaN where the strength is not known, the rotor stands, or it is an open propeller */
export function rotorFactorOf({ burstSpeeds, radix }: Prepared, sizedRotor: number, speed: number): number {
  return speed > 0 && !isOpen(radix, sizedRotor) ? burstSpeeds[sizedRotor] / speed : Number.NaN;
}

/**
 * What a combination has of each limit.
 *
 *     I = (I_pack − I_aux)/δ,  V_motor = δ(N_s·V_cell − R_b·I_pack),  I_cell = I_pack/N_p
 *
 * @param prepared - the question
 * @param judged - its digits and stored numbers, SI
 * @param values - written, by place of LIMITS [SI]; NaN where it is not known
 * @returns nothing
 *
 * Valid for any combination. Source: docs/method/motor.md
 */
export function writeValues(prepared: Prepared, judged: Judged, values: Float64Array): void {
  const { problem, motors, packs } = prepared;
  const { flags, packCurrent } = judged;
  const duty = problem.duties[judged.duty];
  const { series, parallel } = problem.packs[judged.pack];
  const table = packs[judged.pack];
  const cold = motors[judged.motor].thermalResistance === null;
  values[PLACE.point] = flags & (FLAG.noPoint | FLAG.unsolved) ? 0 : 1;
  values[PLACE.parked] = judged.parked;
  values[PLACE.driving] = judged.driving;
  values[PLACE.crossing] = judged.crossing;
  values[PLACE.windingTemperature] = cold ? Number.NaN : judged.windingTemperature;
  values[PLACE.rotorFactor] = isOpen(prepared.radix, judged.sizedRotor)
    ? Number.POSITIVE_INFINITY
    : rotorFactorOf(prepared, judged.sizedRotor, judged.speed);
  values[PLACE.motorCurrent] = (packCurrent - problem.fixed.supply.auxCurrent) / duty;
  values[PLACE.motorVoltage] = duty * (series * table.voltage - table.resistance * packCurrent);
  values[PLACE.cellCurrent] = packCurrent / parallel;
  values[PLACE.height] = sumAt(prepared.sums.height, judged);
  values[PLACE.clearance] = clearanceAt(prepared.stacks, judged);
  values[PLACE.price] = sumAt(prepared.sums.price, judged);
  values[PLACE.time] = judged.time;
  values[PLACE.keptTime] = judged.keptTime;
}

/** @returns whether a value breaks the limit at a place; one that is not known breaks every limit that is asked for */
export function breaks(place: number, value: number, allowed: number): boolean {
  if (IS_LEAST[place]) return allowed > Number.NEGATIVE_INFINITY && !(value >= allowed);
  return allowed < Number.POSITIVE_INFINITY && !(value <= allowed);
}

/** @returns the limits that are broken, a bit each [-], those before `until` looked at */
export function brokenBits(values: Float64Array, allowed: Float64Array, until: number): number {
  let bits = 0;
  for (let place = 0; place < until; place++)
    if (breaks(place, values[place], allowed[place])) bits |= 1 << place;
  return bits;
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** @returns every broken limit in order, with what the combination has and what is allowed */
export function brokenLimits(bits: number, values: Float64Array, allowed: Float64Array): Broken[] {
  return LIMITS.flatMap((limit, place) =>
    bits & (1 << place) ? [{ limit, value: finite(values[place]), allowed: finite(allowed[place]) }] : [],
  );
}
