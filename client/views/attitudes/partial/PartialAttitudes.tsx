import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Changes } from "../../../state/handles.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { knownOf, leading } from "../../../ui/partial/known.ts";
import { Lacking } from "../../../ui/partial/Lacking.tsx";
import { PartialHead } from "../../../ui/partial/PartialHead.tsx";
import { PartialMeaning, toldOf } from "../../../ui/partial/PartialMeaning.tsx";
import { anywhereSentence } from "../../../ui/partial/partialWords.ts";
import { TriedNote } from "../../../ui/partial/TriedNote.tsx";
import { DrivePanel } from "../DrivePanel.tsx";
import { NeededFriction } from "./NeededFriction.tsx";

export interface PartialAttitudesProps {
  readonly book: Book;
  readonly outcome: Outcome;
  /** of the stored build */
  readonly id: string;
  readonly tried: Changes;
}

/** Attitudes of a build that lacks something: what its pull holds, and the friction that it takes where none is known. */
export default function PartialAttitudes({ book, outcome, id, tried }: PartialAttitudesProps) {
  const reply = useMemo(() => knownOf(outcome), [outcome]);
  const known = reply && "known" in reply ? reply.known : null;
  const at = known && leading(known);
  return (
    <>
      <div class="page-head">
        <PartialHead book={book} outcome={outcome} reply={reply} sentence={anywhereSentence} />
        <TriedNote id={id} tried={tried} />
      </div>
      <section class="page-main" aria-label="What is missing">
        {known?.unknown.includes("friction") && <NeededFriction known={known} />}
        <Lacking outcome={outcome} id={id} known={known !== null} />
      </section>
      {known && (
        <section class="attitudes-table" aria-label="What it means">
          <PartialMeaning
            book={book}
            outcome={outcome}
            known={known}
            told={toldOf(known, true)}
            warnings={known.answer.warnings}
          />
        </section>
      )}
      {known && at && (
        <div class="page-below">
          <DrivePanel climber={{ vehicle: known.vehicle, made: Math.max(0, at.suction) }} />
        </div>
      )}
    </>
  );
}
