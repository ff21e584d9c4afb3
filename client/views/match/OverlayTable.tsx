import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { sentenceOf, stateWords } from "../../../shared/decide/verdict/words.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import type { Outcome } from "../../state/outcome.ts";
import { verdictBeside } from "../../state/verdict/found.ts";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { StateMark } from "../../ui/verdict/StateMark.tsx";
import { gradeOf } from "../../ui/verdictWords.ts";
import type { Overlay } from "./overlays.ts";

const SAMPLE = { width: 44, height: 10 };

/** A build laid over a picture of either kind. */
type Laid = Pick<Overlay, "id" | "name" | "letter" | "dash"> & {
  readonly picture: { readonly outcome: Outcome };
};

/** What the laid-over builds hold, under the picture. */
export function OverlayTable({ book, overlays }: { book: Book; overlays: readonly Laid[] }) {
  if (overlays.length === 0) return null;
  return (
    <table class="overlay-table">
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Build</th>
          <th scope="col">Pull</th>
          <th scope="col">Worst</th>
        </tr>
      </thead>
      <tbody>
        {overlays.map((overlay) => (
          <Line key={overlay.id} book={book} overlay={overlay} />
        ))}
      </tbody>
    </table>
  );
}

function Line({ book, overlay }: { book: Book; overlay: Laid }) {
  const { outcome } = overlay.picture;
  const verdict = useMemo(() => verdictBeside(book, outcome), [book, outcome]);
  const worst = outcome.prediction?.worst.parked;
  const { grade } = gradeOf(worst?.margin ?? null, outcome.build.targetMargin, verdict?.state ?? null);
  return (
    <tr>
      <td>
        <svg {...SAMPLE} class="overlay-sample" aria-hidden="true">
          <line x2={SAMPLE.width} y1="5" y2="5" stroke-dasharray={overlay.dash} />
        </svg>{" "}
        {overlay.letter}
      </td>
      <td>
        <a href={href("match", overlay.id)}>{overlay.name}</a>
        {verdict && <small class="quiet"> {sentenceOf(verdict)}</small>}
        {verdict && <StateMark state={verdict.state} words={stateWords(verdict)} />}
        <VerdictMarks book={book} outcome={outcome} />
      </td>
      <td>{formatQuantity(outcome.prediction?.suction ?? 0, "load", { decimals: 0 })}</td>
      <td class={grade}>{worst ? `${marginText(worst.margin)} at ${worst.angle.toFixed(0)}°` : "–"}</td>
    </tr>
  );
}
