import type { Resolved } from "../../shared/book/resolve.ts";
import { decimalsFor, formatFixed, withUnit } from "../../shared/units/format.ts";
import { decimalsOf, shownUnit, unitOf } from "../../shared/units/showing.ts";
import { counted } from "./count.ts";

const LEAST_DECIMALS = 2;
const MOST_DECIMALS = 4;
const FRICTION_DECIMALS = 2;
const FACTOR_DECIMALS = 2;

/** @returns "0.60 mm", "0.47 ± 0.04 mm": as many digits as show one of the uncertainty, or more where asked for */
export function gapText(gap: number, uncertainty: number | null = null, shown = 1): string {
  const { factor } = shownUnit("length");
  const [least, most] = [LEAST_DECIMALS, MOST_DECIMALS].map((decimals) => decimalsOf("length", decimals));
  const digits = uncertainty ? decimalsFor(uncertainty / factor, shown) : least;
  const decimals = Math.min(most, Math.max(least, digits));
  const spread = uncertainty ? ` ± ${formatFixed(uncertainty / factor, decimals)}` : "";
  return withUnit(formatFixed(gap / factor, decimals) + spread, unitOf("length"));
}

/** @returns what tells the gap: "7 pulls", "7 pulls and 1 leak test"; "1 leak test" where that stands in the gap's place */
function gapTests({ calibration }: Pick<Resolved, "calibration">): string {
  if (!calibration) return "no test";
  const leaks = new Set(calibration.leaks.map(({ testId }) => testId)).size;
  const pulls = counted(calibration.pulls.length, "pull");
  if (!calibration.pullsTellGap) return counted(leaks, "leak test");
  return leaks === 0 ? pulls : `${pulls} and ${counted(leaks, "leak test")}`;
}

/**
 * What the gap of a build rests on.
 *
 * @param resolved - gap, calibration
 * @returns "set 0.60 mm", "measured 0.60 mm", "calibrated 0.47 ± 0.04 mm from 7 pulls (set 0.60 mm)", "0.90 mm tried (calibrated 0.47 mm)"
 */
export function gapWords({ gap, calibration }: Pick<Resolved, "gap" | "calibration">): string {
  const { basis, value, uncertainty, stated, standing } = gap;
  const said = stated ? `${stated.basis} ${gapText(stated.value)}` : "not stated";
  if (basis === "calibrated")
    return `calibrated ${gapText(value, uncertainty)} from ${gapTests({ calibration })} (${said})`;
  if (basis === "what-if") {
    const instead = calibration?.answer ? `calibrated ${gapText(standing)}, ${said}` : said;
    return `${gapText(value, uncertainty)} in the build (${instead})`;
  }
  return `${basis} ${gapText(value, uncertainty)}`;
}

/** @returns "calibrated 0.72 ± 0.01 from 7 pulls"; null where the wheels' friction is not calibrated */
export function calibratedFrictionWords({
  friction,
  calibration,
}: Pick<Resolved, "friction" | "calibration">): string | null {
  if (friction?.basis !== "calibrated") return null;
  const spread = friction.uncertainty ? ` ± ${formatFixed(friction.uncertainty, FRICTION_DECIMALS)}` : "";
  const value = formatFixed(friction.value, FRICTION_DECIMALS) + spread;
  return `calibrated ${value} from ${counted(calibration?.pulls.length ?? 0, "pull")}`;
}

/** @returns "0.89 ± 0.02 from 5 pulls"; "1.00 ± 0.10, as no pull tells it" */
export function pullFactorWords({
  pullFactor: { basis, value, uncertainty },
  calibration,
}: Pick<Resolved, "pullFactor" | "calibration">): string {
  const figure = `${formatFixed(value, FACTOR_DECIMALS)} ± ${formatFixed(uncertainty, FACTOR_DECIMALS)}`;
  if (basis === "assumed") return `${figure}, as no two pulls tell it`;
  return `${figure} from ${counted(calibration?.pulls.length ?? 0, "pull")}`;
}
