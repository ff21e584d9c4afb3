import { formatFixed } from "../../../../shared/units/format.ts";
import { counted } from "../../../ui/count.ts";
import { capital, listed } from "../curveWords.ts";
import { agreement, type PullPage } from "./pullData.ts";

const DECIMALS = 2;

/** @returns measured over predicted with its 95 % interval, "0.97 (0.91 to 1.04)" */
export function ratioText(page: PullPage): string {
  if (!page.ratio) return "–";
  const { median, interval } = page.ratio;
  const range = interval
    ? ` (${formatFixed(interval[0], DECIMALS)} to ${formatFixed(interval[1], DECIMALS)})`
    : "";
  return formatFixed(median, DECIMALS) + range;
}

/** @returns what the pulls say of the prediction, one sentence */
export function pullSentence(page: PullPage): string {
  const { meets, above, below } = agreement(page.points);
  const total = meets + above + below;
  if (total === 0) return "No pull can be compared with a prediction yet.";
  const off = [
    ...(above > 0 ? [`${above} held more`] : []),
    ...(below > 0 ? [`${below} let go at less`] : []),
  ];
  const tally = `the prediction lies in ${meets} of ${counted(total, "bracket")}${off.length > 0 ? `, ${listed(off)}` : ""}`;
  if (!page.ratio) return `${capital(tally)}.`;
  return `Pulls come out at ${formatFixed(page.ratio.median, DECIMALS)} × the prediction; ${tally}.`;
}
