import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import type { Band, Bracket, Line, Plot } from "../../../charts/model/plot.ts";
import type { PullPage } from "./pullData.ts";

const grams = (load: number) => inUnit(load, "load");
const ROOM = 0.12;
/** Pulls that lie closer together than this share of the largest are looked at closely, without the zero. */
const CLOSE = 0.6;

/** One span for both axes, so that the line on which they agree is the diagonal. */
function span(brackets: readonly Bracket[]): { least: number; most: number } {
  const values = brackets.flatMap(({ at, lo, hi }) => [at, lo, hi ?? lo]);
  const high = Math.max(1, ...values);
  const low = Math.min(high, ...values);
  const room = Math.max(high - low, high * ROOM) * ROOM;
  return { least: low > CLOSE * high ? low - room : 0, most: high + room };
}

/** Brackets of every pull against what its parts are predicted to hold; on the one-to-one line both agree. */
export function pullPlot(page: PullPage): Plot {
  const brackets = page.points.flatMap((point): Bracket[] => {
    const { key, held, letGo, predicted, aside } = point;
    if (predicted === null) return [];
    const hi = letGo === null ? null : grams(letGo);
    const at = grams(predicted);
    return [{ key, along: "y", at, lo: grams(held), hi, tone: "rotor", aside: aside !== null }];
  });
  const { least, most } = span(brackets);
  const through = (slope: number) =>
    [Math.max(least, least / slope), Math.min(most, most / slope)].map((x) => ({ x, y: slope * x }));
  const lines: Line[] = [
    { key: "one", tone: "quiet", style: "dots", points: through(1), label: "as predicted" },
  ];
  const bands: Band[] = [];
  if (page.ratio) {
    lines.push({
      key: "mean",
      tone: "rotor",
      style: "solid",
      points: through(page.ratio.median),
      label: "as measured",
    });
    const interval = page.ratio.interval;
    if (interval)
      bands.push({
        key: "mean",
        tone: "rotor",
        strength: "mean",
        points: [least, most].map((x) => ({ x, lo: x * interval[0], hi: x * interval[1] })),
      });
  }
  return {
    x: { label: headed("predicted pull", "load"), from: least, to: most },
    y: { label: headed("pull that held and that let go", "load"), from: least, to: most },
    bands,
    lines,
    brackets,
  };
}
