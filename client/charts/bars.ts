import { barsLayout, drawBars } from "./draw/bars.ts";
import type { BarPlot } from "./model/bars.ts";
import { once, type Picture } from "./picture.ts";
import type { Spot } from "./read/spots.ts";

/** Bars, read row by row: a pointer means the row at its height. */
export function barsPicture(plot: BarPlot): Picture {
  return (size) => {
    const layout = barsLayout(plot, size);
    const spots = once(() => plot.bars.map((bar, row): Spot => ({ key: bar.key, ...layout.end(bar, row) })));
    return {
      draw: (svg) => drawBars(svg, plot, layout),
      count: plot.bars.length,
      layout: null,
      spots,
      order: "rows",
      under: ({ y }) => nearestRow(spots(), y),
      hairline: null,
    };
  };
}

function nearestRow(spots: readonly Spot[], y: number): Spot | null {
  const off = (spot: Spot) => Math.abs(spot.y - y);
  return spots.reduce<Spot | null>((best, spot) => (best && off(best) <= off(spot) ? best : spot), null);
}
