import { readdirSync, rmSync, statSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { listBackups } from "./backups.ts";
import { copyBeside } from "./copies.ts";
import { UNFINISHED } from "./placing.ts";

/** What the names of daily copies say; copies of another reason are never removed. */
const DAILY = "daily";
const DAY = 86_400_000;
/** Somewhat less than a day, so that a machine that is switched on each morning makes one each morning [ms]. */
const DUE_AFTER = 0.75 * DAY;

export interface DailyAsked {
  /** the data file */
  readonly file: string;
  readonly at: Date;
  /** how many are kept */
  readonly keep: number;
}

const dailyOf = (file: string) => listBackups(file).filter(({ reason }) => reason === DAILY);

/** A clock that was set back leaves copies of the future: one is due then as well. */
const isDue = ({ file, at }: DailyAsked): boolean =>
  dailyOf(file).every((copy) => Math.abs(at.getTime() - Date.parse(copy.at)) >= DUE_AFTER);

/** What a copy was broken off at by a kill or a power cut is of no use a day later. */
function removeBrokenOff({ file, at }: DailyAsked): void {
  const folder = dirname(file);
  for (const name of readdirSync(folder)) {
    if (!(name.startsWith(`${basename(file)}.`) && name.includes(UNFINISHED))) continue;
    const path = join(folder, name);
    const changed = statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? at.getTime();
    if (Math.abs(at.getTime() - changed) >= DAY) rmSync(path, { force: true });
  }
}

/**
 * Copies the book beside itself where the last daily copy is a day old, and then removes daily copies beyond those that are kept, the oldest first, never the new one.
 *
 * @returns the new copy's name; null where none is due
 */
export function copyDaily(asked: DailyAsked): string | null {
  const { file, at, keep } = asked;
  if (keep === 0 || !isDue(asked)) return null;
  removeBrokenOff(asked);
  const made = copyBeside(file, DAILY, at);
  const others = dailyOf(file).filter(({ name }) => name !== made);
  for (const { name } of others.slice(keep - 1)) rmSync(join(dirname(file), name), { force: true });
  return made;
}
