import { verdictMarks } from "../../shared/book/marks.ts";
import type { Book } from "../../shared/book/resolve.ts";
import type { Outcome } from "../state/outcome.ts";
import { Mark } from "./Mark.tsx";

/** Beside a verdict: what of it is extrapolated, estimated, scaled or known by two points; nothing where nothing is. */
export function VerdictMarks({ book, outcome }: { book: Book; outcome: Outcome }) {
  const marks = verdictMarks(book, outcome);
  if (marks.length === 0) return null;
  return (
    <span class="verdict-marks">
      {marks.map(({ word, what }) => (
        <span key={word}>
          {" "}
          <Mark word={word} title={what} />
        </span>
      ))}
    </span>
  );
}
