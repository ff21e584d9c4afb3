import type { Plot } from "#client/charts/model/plot.ts";
import { PlotChart } from "#client/charts/PlotChart.tsx";
import type { Shown } from "./shown.ts";

const STEPS = Array.from({ length: 21 }, (_, i) => i / 20);
const falling = STEPS.map((share) => ({ x: 14 * share, y: 4000 * (1 - share ** 2) }));
const rising = STEPS.map((share) => ({ x: 14 * share, y: 5000 * share ** 2 }));

/** Every layer that a chart on straight axes has, in an invented plot. */
const plot: Plot = {
  x: { label: "flow, L/s", from: 0, to: 15 },
  y: { label: "suction, Pa", from: 0, to: 5000 },
  regions: [
    {
      key: "beyond",
      tone: "bad",
      outline: [
        { x: 12, y: 0 },
        { x: 15, y: 0 },
        { x: 15, y: 5000 },
        { x: 12, y: 5000 },
      ],
      name: { lines: ["beyond the tests"] },
    },
  ],
  bands: [
    {
      key: "rotor band",
      tone: "rotor",
      strength: "mean",
      points: falling.map(({ x, y }) => ({ x, lo: Math.max(0, y - 300), hi: y + 300 })),
    },
  ],
  lines: [
    { key: "rotor", tone: "rotor", style: "solid", points: falling, name: { lines: ["rotor"] } },
    { key: "leak", tone: "leak", style: "long", points: rising, label: "leak" },
  ],
  levels: [{ key: "needed", along: "y", at: 900, tone: "needed", style: "dots", label: "needed" }],
  marks: falling
    .filter((_, i) => i % 4 === 0)
    .map(({ x, y }, i) => ({
      key: `reading ${i}`,
      x,
      y,
      shape: i % 2,
      tone: "rotor",
      aside: i === 4,
      outlier: i === 3,
    })),
  shapes: [
    { key: "first", shape: 0, text: "first run" },
    { key: "second", shape: 1, text: "second run" },
  ],
  brackets: [{ key: "pull", along: "y", at: 11, lo: 1300, hi: 1700, tone: "ink", aside: false }],
  rings: [{ key: "point", x: 9.4, y: 2250, look: "predicted", name: { lines: ["2250 Pa"] } }],
};

/** The one chart that all charts on straight axes are. */
export const CHARTS: readonly Shown[] = [
  {
    component: "PlotChart",
    state: "every layer",
    drawn: (
      <PlotChart
        plot={plot}
        sentence="An invented rotor meets an invented leak."
        height={() => 320}
        name="components"
        table={() => ({ columns: ["flow, L/s", "suction, Pa"], rows: falling.map(({ x, y }) => [x, y]) })}
        reading={null}
      />
    ),
  },
];
