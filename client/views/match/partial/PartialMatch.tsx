import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { KnownFigures } from "../../../ui/partial/KnownFigures.tsx";
import { knownOf } from "../../../ui/partial/known.ts";
import { Lacking } from "../../../ui/partial/Lacking.tsx";
import { PartialHead } from "../../../ui/partial/PartialHead.tsx";
import { PartialMeaning, toldOf } from "../../../ui/partial/PartialMeaning.tsx";
import { knownSentence } from "../../../ui/partial/partialWords.ts";
import { UnknownMarks } from "../../../ui/partial/UnknownMarks.tsx";

export interface PartialViewProps {
  readonly book: Book;
  readonly outcome: Outcome;
  /** of the stored build */
  readonly id: string;
}

/** Match of a build that lacks something: the point as far as it is known, and what that holds. */
export default function PartialMatch({ book, outcome, id }: PartialViewProps) {
  const reply = useMemo(() => knownOf(outcome), [outcome]);
  const known = reply && "known" in reply ? reply.known : null;
  return (
    <>
      <div class="page-head">
        <PartialHead book={book} outcome={outcome} reply={reply} sentence={knownSentence} />
      </div>
      <section class="page-main match-picture" aria-label="What is known and what is missing">
        {known && known.answer.moments.length > 0 && (
          <>
            <h2>
              Operating point
              <UnknownMarks known={known} gripless />
            </h2>
            <KnownFigures known={known} />
          </>
        )}
        <Lacking outcome={outcome} id={id} known={known !== null} />
      </section>
      {known && (
        <section class="page-below" aria-label="What it means">
          <PartialMeaning
            book={book}
            outcome={outcome}
            known={known}
            told={toldOf(known)}
            warnings={known.answer.warnings}
          />
        </section>
      )}
    </>
  );
}
