import type { ComponentChildren, RefObject } from "preact";
import { useLayoutEffect, useMemo, useRef } from "preact/hooks";
import { behindPaint } from "../state/behindPaint.ts";
import { DataTable } from "../ui/DataTable.tsx";
import { plainName } from "../ui/download.ts";
import type { Table } from "../ui/table.ts";
import { isWide, type Layout } from "./draw/layout.ts";
import type { Drawn, Picture } from "./picture.ts";
import { Reader } from "./read/Reader.tsx";
import type { Reading } from "./read/useReader.ts";
import type { Zoom } from "./read/zoom.ts";
import { Save } from "./Save.tsx";
import { useWidth } from "./useWidth.ts";
import { ZoomButtons } from "./ZoomButtons.tsx";

export interface FigureProps {
  /** one sentence that says what the picture shows */
  readonly sentence: string;
  readonly picture: Picture;
  readonly height: (width: number) => number;
  /** of the saved files */
  readonly name: string;
  readonly table: () => Table;
  /** "The picture as a table" unless given */
  readonly tableTitle?: string;
  /** null where nothing in it can be read by itself */
  readonly reading: Reading | null;
  readonly zoomFor?: (layout: Layout) => Zoom | null;
  /** what can't be named in the picture, by its width */
  readonly legend?: (wide: boolean) => ComponentChildren;
  /** how to read it, between the picture and its foot */
  readonly children?: ComponentChildren;
}

/** Draws a picture into its place: behind the page's paint the first time, so that no verdict waits for it, from then on at once. */
function useDrawing(svg: RefObject<SVGSVGElement | null>, drawn: Drawn | null): void {
  const isDrawn = useRef(false);
  useLayoutEffect(() => {
    const draw = () => {
      if (svg.current) drawn?.draw(svg.current);
      isDrawn.current = drawn !== null;
    };
    if (isDrawn.current) draw();
    return isDrawn.current ? undefined : behindPaint(draw);
  }, [drawn]);
}

/** A picture that follows the size of its place, can be read place by place, opened as a table and saved. */
export function Figure(props: FigureProps) {
  const { sentence, picture, reading, table, legend, children } = props;
  const [place, width] = useWidth<HTMLDivElement>();
  const svg = useRef<SVGSVGElement>(null);
  const height = props.height(width);
  const drawn = useMemo(() => (width > 0 ? picture({ width, height }) : null), [picture, width, height]);
  const zoom = drawn?.layout ? (props.zoomFor?.(drawn.layout) ?? null) : null;
  useDrawing(svg, drawn);
  return (
    <figure class="chart-figure">
      <div class="chart" ref={place} style={{ minHeight: `${height}px` }}>
        <svg ref={svg} role="img" aria-label={sentence} />
        {drawn && reading && drawn.count > 0 && (
          <Reader drawn={drawn} reading={reading} name={props.name} zoom={zoom} />
        )}
      </div>
      {width > 0 && legend?.(isWide(width))}
      {children}
      <figcaption class="chart-foot">
        {zoom && <ZoomButtons zoom={zoom} />}
        <DataTable title={props.tableTitle ?? "The picture as a table"} table={table} />
        <Save
          name={plainName(props.name)}
          sentence={sentence}
          picture={picture}
          height={props.height}
          place={place}
          table={table}
        />
      </figcaption>
    </figure>
  );
}
