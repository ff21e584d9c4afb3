import type { Build } from "../../../shared/model/build.ts";
import { STANDARD_ANGLES } from "../../../shared/physics/predict.ts";
import { atAngle } from "../../../shared/physics/rundown/cycle.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { degrees } from "./attitudeWords.ts";
import { type Attitude, nameProblem } from "./ownAttitudes.ts";

const PERCENT = 100;

/** An attitude taken out of a build, with all that brings it back. */
export interface Removal {
  readonly attitude: Attitude;
  /** its place among the build's attitudes */
  readonly at: number;
  /** the build before and after */
  readonly before: Build;
  readonly after: Build;
}

/** @returns parts of the drive cycle that stay without a name once an attitude is gone [-, of the time] */
export function cycleShareAt(build: Build, at: number): number {
  const { angle } = build.attitudes[at];
  const others = build.attitudes.filter((_, i) => i !== at).map((each) => each.angle);
  if ([...STANDARD_ANGLES, ...others].some(atAngle(angle))) return 0;
  const there = (build.cycle ?? []).filter((part) => atAngle(angle)(part.angle));
  return there.reduce((sum, { share }) => sum + share, 0);
}

/** The cycle without its parts at an angle; the others' shares grow in proportion. Undefined where none is left. */
function cycleWithout(cycle: Build["cycle"], angle: number): Build["cycle"] {
  const rest = (cycle ?? []).filter((part) => !atAngle(angle)(part.angle));
  const whole = rest.reduce((sum, { share }) => sum + share, 0);
  return rest.length === 0 ? undefined : rest.map((part) => ({ ...part, share: part.share / whole }));
}

function withCycle(build: Build, cycle: Build["cycle"]): Build {
  const { cycle: _before, ...rest } = build;
  return cycle ? { ...rest, cycle } : rest;
}

/** Takes one of its own attitudes out of a build, and out of its drive cycle where no other attitude has that angle. */
export function removal(before: Build, at: number): Removal {
  const attitude = before.attitudes[at];
  const attitudes = before.attitudes.filter((_, i) => i !== at);
  const rest = { ...before, attitudes };
  const after =
    cycleShareAt(before, at) > 0 ? withCycle(rest, cycleWithout(before.cycle, attitude.angle)) : rest;
  return { attitude, at, before, after };
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * Puts an attitude back where it was.
 *
 * @param now - the build as it stands by now; what was changed in it since stays
 * @returns the build with the attitude, or in words why it can't be
 */
export function undone(
  now: Build,
  { attitude, at, before, after }: Removal,
): { readonly build: Build } | { readonly problem: string } {
  const problem = nameProblem(attitude.name, now.attitudes);
  if (problem !== null) return { problem };
  const attitudes = [...now.attitudes.slice(0, at), attitude, ...now.attitudes.slice(at)];
  const cycle = same(now.cycle, after.cycle) ? before.cycle : now.cycle;
  return { build: withCycle({ ...now, attitudes }, cycle) };
}

const percent = (share: number) => `${formatFixed(share * PERCENT, 0)}\u202f%`;

/** @returns what is asked before an attitude goes */
export function removalQuestion(build: Build, at: number): string {
  const { name, angle } = build.attitudes[at];
  const question = `Remove ${name} ${degrees(angle)} from the build?`;
  const share = cycleShareAt(build, at);
  if (share === 0) return question;
  const rest = cycleWithout(build.cycle, angle);
  return `${question} The drive cycle spends ${percent(share)} of the time there: that part goes with it, ${
    rest ? "and the other parts' shares grow to make 100\u202f%" : "and no drive cycle is left"
  }.`;
}

/** @returns what was done */
export function removedText({ attitude, before, at }: Removal): string {
  const share = cycleShareAt(before, at);
  const cycle = share > 0 ? `, with its ${percent(share)} of the drive cycle` : "";
  return `Removed ${attitude.name} ${degrees(attitude.angle)}${cycle}.`;
}
