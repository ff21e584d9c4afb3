import { useMemo } from "preact/hooks";
import { Figure, type FigureProps } from "./Figure.tsx";
import { Legend } from "./Legend.tsx";
import type { Plot } from "./model/plot.ts";
import { plotPicture, type Reads } from "./picture.ts";
import { useZoom } from "./read/zoom.ts";

export interface PlotChartProps extends Omit<FigureProps, "picture" | "zoomFor" | "legend"> {
  readonly plot: Plot;
  readonly reads?: Reads;
}

/** A chart on straight axes; where its readings are dense it can be zoomed. */
export function PlotChart({ plot, reads, ...rest }: PlotChartProps) {
  const { shown, zoomFor } = useZoom(plot);
  const picture = useMemo(() => plotPicture(shown, reads), [shown, reads]);
  return (
    <Figure
      {...rest}
      picture={picture}
      zoomFor={zoomFor}
      legend={(wide) => (wide || plot.namedAbove ? null : <Legend plot={plot} />)}
    />
  );
}
