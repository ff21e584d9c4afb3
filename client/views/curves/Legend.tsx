import type { Plot } from "./plot/plot.ts";
import { shapePath } from "./plot/shapes.ts";

/** Which symbol is which test and which line is what, for a chart too narrow to say it beside them. */
export function Legend({ plot }: { plot: Plot }) {
  const tone = plot.marks?.[0]?.tone ?? "rotor";
  const lines = (plot.lines ?? []).filter((line) => line.label);
  return (
    <ul class="curves-legend">
      {(plot.shapes ?? []).map((each) => (
        <li key={each.key}>
          <svg width="18" height="18" viewBox="-9 -9 18 18" aria-hidden="true">
            <path class={`curves-mark tone-${tone}`} d={shapePath(each.shape)} />
          </svg>
          {each.text}
        </li>
      ))}
      {lines.map((line) => (
        <li key={line.key}>
          <svg width="28" height="18" viewBox="0 -9 28 18" aria-hidden="true">
            <path class={`curves-line tone-${line.tone} ${line.style}`} d="M0,0H28" />
          </svg>
          {line.label}
        </li>
      ))}
    </ul>
  );
}
