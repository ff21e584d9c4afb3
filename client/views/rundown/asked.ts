import { BUILD, MOST_CYCLE_PARTS } from "../../../shared/model/limits.ts";
import type { CycleSegment } from "../../../shared/physics/rundown.ts";
import { type Limits, withinLimits } from "../../../shared/units/limits.ts";
import { parseNumber } from "../../../shared/units/number.ts";
import { DRIVE_CURRENT, SHARE, START_CHARGE, TARGET_MARGIN } from "./handles.ts";
import { type Wish, wishFrom, wishText } from "./keep/wish.ts";

/** What this view tries, as the address carries it; null where it is as in the build. */
export interface Tried {
  /** z₀ [-] */
  readonly startCharge: number | null;
  readonly targetMargin: number | null;
  /** an empty one: a steady load */
  readonly cycle: readonly CycleSegment[] | null;
  /** what a controller keeps; null: the throttle is steady */
  readonly keep: Wish | null;
}

const PERCENT = 100;
/** Digits of a share or a current in the address. */
const DIGITS = 6;
const STEADY = "steady";
const PARKED = "parked";

const short = (value: number): string => String(Number(value.toFixed(DIGITS)));

/** @returns a cycle as the address writes it: "90:45:0.9,153:55:parked", degrees, percent, amperes */
export function cycleText(cycle: readonly CycleSegment[]): string {
  if (cycle.length === 0) return STEADY;
  return cycle
    .map(({ angle, share, driveCurrent, moving }) =>
      [short(angle), short(share * PERCENT), moving === false ? PARKED : short(driveCurrent)].join(":"),
    )
    .join(",");
}

/** @returns the number that an address writes; null where it is none within its limits */
function within(text: string | null, limits: Limits, unit = 1): number | null {
  const value = text === null ? null : parseNumber(text);
  return value === null ? null : withinLimits(value / unit, limits);
}

function segmentOf(text: string): CycleSegment | null {
  const [angleText = "", shareText = "", loadText = ""] = text.split(":");
  const parked = loadText === PARKED;
  const angle = within(angleText, BUILD.cycle.angle);
  const share = within(shareText, SHARE.limits, PERCENT);
  const driveCurrent = parked ? 0 : within(loadText, DRIVE_CURRENT.limits);
  if (angle === null || share === null || driveCurrent === null) return null;
  return { angle, share, driveCurrent, moving: !parked };
}

/** @returns the cycle that an address writes; null where it writes none that can be read */
export function cycleFrom(text: string | null): readonly CycleSegment[] | null {
  if (text === null || text === "") return null;
  if (text === STEADY) return [];
  const parts = text.split(",");
  const segments = parts.map(segmentOf).filter((segment) => segment !== null);
  return segments.length === parts.length && parts.length <= MOST_CYCLE_PARTS ? segments : null;
}

/** @returns what an address tries of this view; what can't be is left out */
export function triedFrom(query: URLSearchParams): Tried {
  return {
    startCharge: within(query.get("start"), START_CHARGE.limits, PERCENT),
    targetMargin: within(query.get("wanted"), TARGET_MARGIN.limits),
    cycle: cycleFrom(query.get("cycle")),
    keep: wishFrom(query.get("keep")),
  };
}

/** @returns the address's query with what is tried in this view, everything else in it untouched */
export function withTried(
  query: URLSearchParams,
  { startCharge, targetMargin, cycle, keep }: Tried,
): URLSearchParams {
  const next = new URLSearchParams(query);
  const put = (key: string, text: string | null) => {
    if (text === null) next.delete(key);
    else next.set(key, text);
  };
  put("start", startCharge === null ? null : short(startCharge * PERCENT));
  put("wanted", targetMargin === null ? null : short(targetMargin));
  put("cycle", cycle === null ? null : cycleText(cycle));
  put("keep", keep && wishText(keep));
  return next;
}
