import type { Mode } from "../../../shared/physics/hold/holdAt.ts";
import type { Stand, State } from "./stand.ts";

/** A stretch of attitudes on which one mode needs most pull. */
export interface Sector {
  /** [°] */
  readonly from: number;
  readonly to: number;
  /** null: no pull is needed */
  readonly mode: Mode | null;
}

const HALVINGS = 12;

/** Of modes that tie, the one that governed before stays. */
function modeOf(stand: Stand, state: State, before: Mode | null): Mode | null {
  const { modes } = stand[state];
  if (before !== null && modes.includes(before)) return before;
  return modes[0] ?? null;
}

/** The attitude between two at which the mode changes, by halving. */
function border(at: (angle: number) => Stand, state: State, from: number, to: number): number {
  const before = modeOf(at(from), state, null);
  let [low, high] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (modeOf(at(middle), state, before) === before) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The sectors of the half-rose.
 *
 * @param stands - in steps from floor to ceiling
 * @param state - parked or driving
 * @param at - a stand at any attitude, for the borders
 * @returns sectors that meet, from 0° to 180°; an end point that alone has another mode makes none
 */
export function sectorsOf(stands: readonly Stand[], state: State, at: (angle: number) => Stand): Sector[] {
  const sectors: Sector[] = [];
  let from = stands[0].angle;
  let mode = modeOf(stands[0], state, null);
  stands.slice(1).forEach((stand, i) => {
    const next = modeOf(stand, state, mode);
    if (next === mode) return;
    const to = border(at, state, stands[i].angle, stand.angle);
    if (to - from > 1e-2) sectors.push({ from, to, mode });
    [from, mode] = [to, next];
  });
  const end = stands[stands.length - 1].angle;
  if (end - from > 1e-2) sectors.push({ from, to: end, mode });
  return sectors;
}
