import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { percent } from "../words.ts";
import type { ReducedPulls } from "./pullReduced.ts";

/** A p-value below it is called a drift [-]. Common practice, no source. */
const SIGNIFICANT = 0.05;
const SMALLEST = 0.001;

const pText = (p: number) => (p < SMALLEST ? `p < ${SMALLEST}` : `p = ${formatFixed(p, p < 0.1 ? 3 : 2)}`);

/** @returns what the prediction leaves of a trend with voltage and with the order of the pulls, in words with its p-values */
export function driftSentences({ againstVoltage, againstOrder }: ReducedPulls): string[] {
  const voltage = againstVoltage
    ? againstVoltage.pValue < SIGNIFICANT
      ? `The prediction does not take out all of the charge: pulls over their predictions still ${way(againstVoltage.slope)} ${percent(Math.abs(Math.expm1(againstVoltage.slope)))} per volt (${pText(againstVoltage.pValue)}).`
      : `Once the prediction is taken out, no trend with voltage is left (${pText(againstVoltage.pValue)}).`
    : "Whether a trend with voltage is left can't be told: it takes four pulls or more with the voltage read, not all at one.";
  const order = againstOrder
    ? againstOrder.pValue < SIGNIFICANT
      ? `From pull to pull they ${way(againstOrder.slope)} ${percent(Math.abs(Math.expm1(againstOrder.slope)))} (${pText(againstOrder.pValue)}): something changes from run to run, such as wear of the lip or dust.`
      : `Nor does the order of the pulls show one (${pText(againstOrder.pValue)}).`
    : "";
  return [voltage, order].filter((text) => text !== "");
}

const way = (slope: number) => (slope < 0 ? "fall by" : "rise by");

/** @returns what the pulls were brought to, "Brought to a predicted pull of 8.1 N (7.4 V)" */
export function referenceText({ reference, voltage }: ReducedPulls): string {
  const at = voltage === null ? "" : ` (${formatQuantity(voltage, "voltage")})`;
  return `Each pull over its own prediction, brought to a predicted pull of ${formatQuantity(reference, "load")}${at}.`;
}
