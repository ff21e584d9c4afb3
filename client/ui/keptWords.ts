import { marginText, percentText, timeText } from "../../shared/decide/verdict/figures.ts";
import type { KeptReach } from "../../shared/decide/ways/kept.ts";

/** @returns what a controller would save, as a line: "A controller that keeps 1.50 ×: 9.4 min instead of 5.7 min, 71 % throttle at first, from 8.8 min on full throttle is too little" */
export function keptLine({ dutyAtStart, now, kept, keeps }: KeptReach, target: number): string {
  const saved = `A controller that keeps ${marginText(target)}: ${timeText(kept)} instead of ${timeText(now)}, ${percentText(dutyAtStart)} throttle at first`;
  return keeps < kept ? `${saved}, from ${timeText(keeps)} on full throttle is too little` : saved;
}
