import { inUnit } from "../../../../shared/units/format.ts";
import { axisOver, type Band, type Bracket, type Line, type Plot } from "../plot/plot.ts";
import type { PullPage } from "./pullData.ts";

const grams = (load: number) => inUnit(load, "load", "g");
const ROOM = 1.12;

/** Brackets of every pull against what its parts are predicted to hold; on the one-to-one line both agree. */
export function pullPlot(page: PullPage): Plot {
  const brackets = page.points.flatMap((point): Bracket[] => {
    const { key, testId, row, held, letGo, predicted, aside } = point;
    if (predicted === null) return [];
    const hi = letGo === null ? null : grams(letGo);
    const at = grams(predicted);
    return [{ key, testId, row, along: "y", at, lo: grams(held), hi, tone: "rotor", aside: aside !== null }];
  });
  const most = Math.max(1, ...brackets.flatMap(({ at, lo, hi }) => [at, lo, hi ?? lo])) * ROOM;
  const through = (slope: number) => [
    { x: 0, y: 0 },
    { x: most, y: slope * most },
  ];
  const lines: Line[] = [
    { key: "one", tone: "quiet", style: "dots", points: through(1), label: "as predicted" },
  ];
  const bands: Band[] = [];
  if (page.ratio) {
    lines.push({
      key: "mean",
      tone: "rotor",
      style: "solid",
      points: through(page.ratio.mean),
      label: "mean",
    });
    const interval = page.ratio.meanInterval;
    if (interval)
      bands.push({
        key: "mean",
        tone: "rotor",
        strength: "mean",
        points: [0, most].map((x) => ({ x, lo: x * interval[0], hi: x * interval[1] })),
      });
  }
  return {
    x: axisOver("predicted pull, g", [most], [0]),
    y: axisOver("pull that held and that let go, g", [most], [0]),
    bands,
    lines,
    brackets,
  };
}
