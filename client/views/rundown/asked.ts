import type { CycleSegment } from "../../../shared/physics/rundown.ts";
import { parseNumber } from "../../../shared/units/number.ts";

/** What this view tries, as the address carries it; null where it is as in the build. */
export interface Tried {
  /** z₀ [-] */
  readonly startCharge: number | null;
  readonly targetMargin: number | null;
  /** an empty one: a steady load */
  readonly cycle: readonly CycleSegment[] | null;
}

const PERCENT = 100;
/** As the model takes them. */
const [MOST_SEGMENTS, MOST_MARGIN, MOST_CURRENT, CEILING] = [12, 20, 1000, 180];
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

function segmentOf(text: string): CycleSegment | null {
  const [angleText = "", shareText = "", loadText = ""] = text.split(":");
  const parked = loadText === PARKED;
  const [angle, percent, current] = [angleText, shareText, parked ? "0" : loadText].map(parseNumber);
  if (angle === null || percent === null || current === null) return null;
  const fits =
    angle >= 0 &&
    angle <= CEILING &&
    percent > 0 &&
    percent <= PERCENT &&
    current >= 0 &&
    current <= MOST_CURRENT;
  return fits ? { angle, share: percent / PERCENT, driveCurrent: current, moving: !parked } : null;
}

/** @returns the cycle that an address writes; null where it writes none that can be read */
export function cycleFrom(text: string | null): readonly CycleSegment[] | null {
  if (text === null || text === "") return null;
  if (text === STEADY) return [];
  const parts = text.split(",");
  const segments = parts.map(segmentOf).filter((segment) => segment !== null);
  return segments.length === parts.length && parts.length <= MOST_SEGMENTS ? segments : null;
}

function within(text: string | null, least: number, most: number): number | null {
  const value = text === null ? null : parseNumber(text);
  return value !== null && value >= least && value <= most ? value : null;
}

/** @returns what an address tries of this view; what can't be is left out */
export function triedFrom(query: URLSearchParams): Tried {
  const percent = within(query.get("start"), 1, PERCENT);
  return {
    startCharge: percent === null ? null : percent / PERCENT,
    targetMargin: within(query.get("wanted"), 1, MOST_MARGIN),
    cycle: cycleFrom(query.get("cycle")),
  };
}

/** @returns the address's query with what is tried in this view, everything else in it untouched */
export function withTried(
  query: URLSearchParams,
  { startCharge, targetMargin, cycle }: Tried,
): URLSearchParams {
  const next = new URLSearchParams(query);
  const put = (key: string, text: string | null) => {
    if (text === null) next.delete(key);
    else next.set(key, text);
  };
  put("start", startCharge === null ? null : short(startCharge * PERCENT));
  put("wanted", targetMargin === null ? null : short(targetMargin));
  put("cycle", cycle === null ? null : cycleText(cycle));
  return next;
}
