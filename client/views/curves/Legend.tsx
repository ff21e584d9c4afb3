import type { ShapeLabel } from "./plot/plot.ts";
import { shapePath } from "./plot/shapes.ts";

/** Which symbol is which test, for a chart too narrow to say it beside the points. */
export function Legend({ shapes }: { shapes: readonly ShapeLabel[] }) {
  return (
    <ul class="curves-legend">
      {shapes.map((each) => (
        <li key={each.key}>
          <svg width="18" height="18" viewBox="-9 -9 18 18" aria-hidden="true">
            <path class="curves-mark tone-rotor" d={shapePath(each.shape)} />
          </svg>
          {each.text}
        </li>
      ))}
    </ul>
  );
}
