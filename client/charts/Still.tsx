import { useLayoutEffect, useRef } from "preact/hooks";
import type { Drawn } from "./picture.ts";
import type { ChartSize } from "./size.ts";
import { useWidth } from "./useWidth.ts";

export interface StillProps {
  /** one sentence that says what the picture shows */
  readonly sentence: string;
  readonly picture: (size: ChartSize) => Pick<Drawn, "draw">;
  readonly height: (width: number) => number;
  /** on paper, whatever the screen [px] */
  readonly paper: number;
}

/** Every still on the page, drawn at its width on paper or on the screen. */
const stills = new Set<(onPaper: boolean) => void>();

const drawAll = (onPaper: boolean) => {
  for (const draw of stills) draw(onPaper);
};

if (typeof addEventListener === "function") {
  addEventListener("beforeprint", drawForPaper);
  addEventListener("afterprint", () => drawAll(false));
}

/** Draws every still on the page at its width on paper, until the print is over. */
export function drawForPaper(): void {
  drawAll(true);
}

/** Does something while every still on the page is drawn as on paper. */
export function asOnPaper<T>(act: () => T): T {
  drawAll(true);
  try {
    return act();
  } finally {
    drawAll(false);
  }
}

/** A picture to be printed: nothing in it is read or saved by itself, and it keeps its width on paper. */
export function Still({ sentence, picture, height, paper }: StillProps) {
  const [place, width] = useWidth<HTMLDivElement>();
  const svg = useRef<SVGSVGElement>(null);
  const draw = (onPaper: boolean) => {
    const wide = onPaper ? paper : Math.min(width, paper);
    if (!svg.current || wide === 0) return;
    const size = { width: wide, height: height(wide) };
    picture(size).draw(svg.current);
    svg.current.setAttribute("viewBox", `0 0 ${size.width} ${size.height}`);
    svg.current.removeAttribute("height");
    svg.current.removeAttribute("width");
  };
  useLayoutEffect(() => {
    draw(false);
    stills.add(draw);
    return () => {
      stills.delete(draw);
    };
  });
  return (
    <div
      class="chart still"
      ref={place}
      style={{ "--still": `${height(Math.min(width, paper))}px`, "--paper-width": `${paper}px` }}
    >
      <svg ref={svg} role="img" aria-label={sentence} />
    </div>
  );
}
