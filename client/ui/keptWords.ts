import { marginText, percentText, timeText } from "../../shared/decide/verdict/figures.ts";
import type { KeptReach } from "../../shared/decide/ways/kept.ts";

/** @returns what a controller would save, as a line: "A controller that keeps 1.50 ×: 9.4 min instead of 5.7 min, 71 % throttle at first" */
export function keptLine({ dutyAtStart, now, kept }: KeptReach, target: number): string {
  return `A controller that keeps ${marginText(target)}: ${timeText(kept)} instead of ${timeText(now)}, ${percentText(dutyAtStart)} throttle at first`;
}
