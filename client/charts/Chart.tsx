import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

export interface ChartSize {
  readonly width: number;
  readonly height: number;
}

export interface ChartProps {
  /** one sentence that says what the picture shows */
  readonly sentence: string;
  /** draws into the svg; a plain function of data, called on every change of data or size */
  readonly draw: (svg: SVGSVGElement, size: ChartSize) => void;
  readonly height: (width: number) => number;
  /** the svg, for saving */
  readonly svgRef?: { current: SVGSVGElement | null };
  /** what lies over the drawing, such as a tooltip */
  readonly children?: ComponentChildren;
}

/** A chart that follows the size of its place, drawn at true pixels so that its type stays readable. */
export function Chart({ sentence, draw, height, svgRef, children }: ChartProps) {
  const box = useRef<HTMLDivElement>(null);
  const own = useRef<SVGSVGElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    setWidth(Math.floor(element.clientWidth));
    const observer = new ResizeObserver(() => setWidth(Math.floor(element.clientWidth)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  useLayoutEffect(() => {
    if (svgRef) svgRef.current = own.current;
    if (own.current && width > 0) draw(own.current, { width, height: height(width) });
  });
  return (
    <div class="chart" ref={box}>
      <svg ref={own} role="img" aria-label={sentence} />
      {children}
    </div>
  );
}
