import { type CycleSegment, sharesAreWhole } from "../../../shared/physics/rundown/cycle.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { parseNumber } from "../../../shared/units/number.ts";

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
const MOST_CURRENT = 1000;
/** As many rows as a cycle takes. */
export const MOST_ROWS = 12;
const DECIMALS = 4;

const text = (value: number): string => String(Number(value.toFixed(DECIMALS)));

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
  const used = rows.reduce((sum, row) => sum + (parseNumber(row.share) ?? 0), 0);
  const left = Math.max(0, PERCENT - used);
  return [
    ...rows,
    { key, angle: text(angle), share: left > 0 ? text(left) : "", current: "0", parked: false },
  ];
}

function shareProblem(share: number | null, read: string): string | null {
  if (share !== null && share > 0 && share <= PERCENT) return null;
  const said = read.trim() === "" ? "Nothing was typed" : `Read “${read.trim()}”`;
  return `${said}; allowed: above 0 to 100\u2009%, for example “40”.`;
}

function currentProblem(current: number | null, read: string): string | null {
  if (current !== null && current >= 0 && current <= MOST_CURRENT) return null;
  const said = read.trim() === "" ? "Nothing was typed" : `Read “${read.trim()}”`;
  return `${said}; allowed: 0 to ${MOST_CURRENT}\u2009A, for example “0.8”.`;
}

/** @returns what the rows say, and what is wrong with them, field by field */
export function readRows(rows: readonly CycleRow[]): ReadCycle {
  const problems = new Map<string, string>();
  const segments = rows.map((row, i): CycleSegment => {
    const [share, current] = [parseNumber(row.share), row.parked ? 0 : parseNumber(row.current)];
    const wrongShare = shareProblem(share, row.share);
    const wrongCurrent = row.parked ? null : currentProblem(current, row.current);
    if (wrongShare) problems.set(`${i}.share`, wrongShare);
    if (wrongCurrent) problems.set(`${i}.current`, wrongCurrent);
    return {
      angle: Number(row.angle),
      share: (share ?? 0) / PERCENT,
      driveCurrent: current ?? 0,
      moving: !row.parked,
    };
  });
  if (problems.size > 0) return { cycle: null, problems, whole: null };
  const sum = segments.reduce((total, { share }) => total + share, 0);
  if (rows.length > 0 && !sharesAreWhole(sum)) {
    const whole = `The shares add up to ${formatFixed(sum * PERCENT, 1)}\u2009%; they must add up to 100\u2009%.`;
    return { cycle: null, problems, whole };
  }
  return { cycle: segments, problems, whole: null };
}
