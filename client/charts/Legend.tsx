import { styleOf } from "./draw/curves.ts";
import { shapePath } from "./draw/shapes.ts";
import type { Line, Plot } from "./model/plot.ts";

/** Lines that a narrow chart has no room to name at their end. */
const unnamed = ({ label }: Line): { readonly text: string } | null => {
  if (typeof label === "string") return { text: label };
  return label && label.short === undefined ? label : null;
};

/** Which symbol is which test and which line is what, for a chart too narrow to say it beside them. */
export function Legend({ plot }: { plot: Plot }) {
  const toneOf = (shape: number) => plot.marks?.find((mark) => mark.shape === shape)?.tone ?? "rotor";
  const lines = (plot.lines ?? []).flatMap((line) => {
    const said = unnamed(line);
    return said ? [{ ...line, text: said.text }] : [];
  });
  if (lines.length === 0 && (plot.shapes ?? []).length === 0) return null;
  return (
    <ul class="chart-legend">
      {(plot.shapes ?? []).map((each) => (
        <li key={each.key}>
          <svg width="18" height="18" viewBox="-9 -9 18 18" aria-hidden="true">
            <path class={`chart-mark tone-${toneOf(each.shape)}`} d={`M0,0${shapePath(each.shape)}`} />
          </svg>
          {each.text}
        </li>
      ))}
      {lines.map(({ key, text, tone: of, style }) => (
        <li key={key}>
          <svg width="28" height="18" viewBox="0 -9 28 18" aria-hidden="true">
            <path
              class={`chart-line tone-${of} ${styleOf(style).name}`}
              stroke-dasharray={styleOf(style).dash ?? undefined}
              d="M0,0H28"
            />
          </svg>
          {text}
        </li>
      ))}
    </ul>
  );
}
