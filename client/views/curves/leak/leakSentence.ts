import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { percent } from "../curveWords.ts";
import { type LeakGroup, lipFlow } from "./leakData.ts";

const EXPONENT_DECIMALS = 3;

/** @returns x with its standard error */
export function exponentText(group: LeakGroup): string {
  if (!group.fit) return "–";
  const { exponent, standardErrors } = group.fit;
  const error = standardErrors.exponent;
  return `${formatFixed(exponent, EXPONENT_DECIMALS)}${error === null ? "" : ` ± ${formatFixed(error, EXPONENT_DECIMALS)}`}`;
}

/** Middle of the tested pressures, on the logarithmic scale [Pa]. */
export function middlePressure(group: LeakGroup): number {
  const [lo, hi] = group.fit?.pressureRange ?? [1, 1];
  return Math.sqrt(lo * hi);
}

/** @returns measured flow over the one of the lip-gap law, in the middle of the tested range; null without a fit or a computed flow */
export function againstLip(group: LeakGroup): number | null {
  if (!group.fit) return null;
  const pressure = middlePressure(group);
  const computed = lipFlow(group, pressure);
  return computed > 0 ? (group.fit.coefficient * pressure ** group.fit.exponent) / computed : null;
}

/** @returns what a leak test says, one sentence */
export function leakSentence(group: LeakGroup): string {
  const who = `${group.skirt.data.name} on ${group.surface.data.name}`;
  if (!group.fit) return `What ${who} leaks is not settled yet.`;
  const pressure = middlePressure(group);
  const flow = group.fit.coefficient * pressure ** group.fit.exponent;
  const ratio = againstLip(group);
  const at = `${formatQuantity(flow, "flow")} at ${formatQuantity(pressure, "pressure")}`;
  if (ratio === null) return `${who} leaks ${at}.`;
  const more = ratio >= 1 ? "more" : "less";
  const gap = formatQuantity(group.gap, "length", { digits: 2 });
  return `${who} leaks ${at}, ${percent(Math.abs(ratio - 1))} ${more} than a lip gap of ${gap} computes to.`;
}
