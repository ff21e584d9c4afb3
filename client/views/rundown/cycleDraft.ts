import { type CycleSegment, sharesAreWhole } from "../../../shared/physics/rundown/cycle.ts";
import { formatFixed, formatShort } from "../../../shared/units/format.ts";
import { isGood, type NumberSpec, readNumber } from "../../../shared/units/readNumber.ts";
import { DRIVE_CURRENT, SHARE } from "./handles.ts";

/** A row of the cycle as typed. */
export interface CycleRow {
  readonly key: number;
  /** [°] as text, one of the offered attitudes */
  readonly angle: string;
  /** [%] */
  readonly share: string;
  /** [A] */
  readonly current: string;
  readonly parked: boolean;
}

export interface ReadCycle {
  /** null until every row can be read and the shares are the whole */
  readonly cycle: readonly CycleSegment[] | null;
  /** by row and field: "0.share" */
  readonly problems: ReadonlyMap<string, string>;
  /** what is wrong with the rows together */
  readonly whole: string | null;
}

const PERCENT = 100;
const DECIMALS = 4;

const text = (value: number): string => formatShort(value, DECIMALS);

/** @returns a cycle as it would be typed */
export function rowsOf(cycle: readonly CycleSegment[]): CycleRow[] {
  return cycle.map(({ angle, share, driveCurrent, moving }, key) => ({
    key,
    angle: text(angle),
    share: text(share * PERCENT),
    current: text(driveCurrent),
    parked: moving === false,
  }));
}

/** @returns the rows and one more: what is left of the time, at that attitude */
export function withRow(rows: readonly CycleRow[], angle: number): CycleRow[] {
  const key = rows.reduce((most, row) => Math.max(most, row.key), -1) + 1;
  const used = rows.reduce((sum, row) => {
    const reading = readNumber(SHARE, row.share);
    return sum + (isGood(reading) ? reading.value : 0);
  }, 0);
  const left = Math.max(0, 1 - used) * PERCENT;
  return [
    ...rows,
    { key, angle: text(angle), share: left > 0 ? text(left) : "", current: "0", parked: false },
  ];
}

/** @returns what the rows say, and what is wrong with them, field by field */
export function readRows(rows: readonly CycleRow[]): ReadCycle {
  const problems = new Map<string, string>();
  const segments = rows.map((row, i): CycleSegment => {
    const numberAt = (key: "share" | "current", spec: NumberSpec) => {
      const reading = readNumber(spec, row[key]);
      if (isGood(reading)) return reading.value;
      problems.set(`${i}.${key}`, reading.message);
      return 0;
    };
    return {
      angle: Number(row.angle),
      share: numberAt("share", SHARE),
      driveCurrent: row.parked ? 0 : numberAt("current", DRIVE_CURRENT),
      moving: !row.parked,
    };
  });
  if (problems.size > 0) return { cycle: null, problems, whole: null };
  const sum = segments.reduce((total, { share }) => total + share, 0);
  if (rows.length > 0 && !sharesAreWhole(sum)) {
    const whole = `The shares add up to ${formatFixed(sum * PERCENT, 1)}\u202f%; they must add up to 100\u202f%.`;
    return { cycle: null, problems, whole };
  }
  return { cycle: segments, problems, whole: null };
}
