import { formatFixed } from "../../../../shared/units/format.ts";
import { capital, counted, listed } from "../words.ts";
import { agreement, type PullPage } from "./pullData.ts";

const DECIMALS = 2;

/** @returns measured over predicted with its 95 % interval, "0.97 (0.91 to 1.04)" */
export function ratioText(page: PullPage): string {
  if (!page.ratio) return "–";
  const { mean, meanInterval } = page.ratio;
  const interval = meanInterval
    ? ` (${formatFixed(meanInterval[0], DECIMALS)} to ${formatFixed(meanInterval[1], DECIMALS)})`
    : "";
  return formatFixed(mean, DECIMALS) + interval;
}

/** @returns what the pulls say of the prediction, one sentence */
export function pullSentence(page: PullPage): string {
  const { meets, above, below } = agreement(page.points);
  const total = meets + above + below;
  if (total === 0) return "No pull can be compared with a prediction yet.";
  if (page.ratio)
    return `Pulls come out at ${formatFixed(page.ratio.mean, DECIMALS)} × the prediction; ${meets} of ${counted(total, "bracket")} hold it.`;
  const off = [
    ...(above > 0 ? [`${above} held more`] : []),
    ...(below > 0 ? [`${below} let go at less`] : []),
  ];
  return capital(
    `${meets} of ${counted(total, "bracket")} hold the prediction${off.length > 0 ? `, ${listed(off)}` : ""}.`,
  );
}
