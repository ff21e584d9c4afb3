import type { Drift } from "../../../../shared/fit/pullDrift.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { percent } from "../curveWords.ts";
import type { ReducedPulls } from "./pullReduced.ts";

/** A p-value below it is called a drift [-]. Common practice, no source. */
const SIGNIFICANT = 0.05;
const SMALLEST = 0.001;

/** Below so many pulls χ² is a rough guide. Common practice, no source. */
const FEW = 10;

function pText(p: number, pulls: number): string {
  const value = p < SMALLEST ? `p < ${SMALLEST}` : `p = ${formatFixed(p, p < 0.1 ? 3 : 2)}`;
  return pulls < FEW ? `${value}, rough with ${pulls} pulls` : value;
}

function ofVoltage(drift: Drift | null, pulls: number): string {
  if (!drift)
    return "Whether a trend with voltage is left can't be told: it takes four pulls or more, some that held and some that let go, at unlike voltages.";
  const p = pText(drift.pValue, pulls);
  return drift.pValue < SIGNIFICANT
    ? `The prediction does not take out all of the charge: pulls over their predictions still ${way(drift.slope)} ${percent(Math.abs(Math.expm1(drift.slope)))} per volt (${p}).`
    : `Once the prediction is taken out, no trend with voltage is left (${p}).`;
}

function ofOrder(drift: Drift | null, pulls: number): string[] {
  if (!drift) return [];
  const p = pText(drift.pValue, pulls);
  if (drift.pValue >= SIGNIFICANT) return [`From pull to pull there is no trend (${p}).`];
  return [
    `From pull to pull they ${way(drift.slope)} ${percent(Math.abs(Math.expm1(drift.slope)))} (${p}): something changes from run to run, such as wear of the lip or dust.`,
  ];
}

/** @returns what the prediction leaves of a trend with voltage and with the order of the pulls, in words with its p-values */
export function driftSentences({ againstVoltage, againstOrder, counted }: ReducedPulls): string[] {
  return [ofVoltage(againstVoltage, counted), ...ofOrder(againstOrder, counted)];
}

const way = (slope: number) => (slope < 0 ? "fall by" : "rise by");

/** @returns what the pulls were brought to, "Brought to a predicted pull of 8.1 N (7.4 V)" */
export function referenceText({ reference, voltage }: ReducedPulls): string {
  const at = voltage === null ? "" : ` (${formatQuantity(voltage, "voltage")})`;
  return `Each pull over its own prediction, brought to a predicted pull of ${formatQuantity(reference, "load")}${at}.`;
}
