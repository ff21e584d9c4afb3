import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { CycleSegment } from "../../../../shared/physics/rundown.ts";
import type { Changes } from "../../../state/handles.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { KnownFigures } from "../../../ui/partial/KnownFigures.tsx";
import { type Known, knownOf } from "../../../ui/partial/known.ts";
import { Lacking } from "../../../ui/partial/Lacking.tsx";
import { PartialHead } from "../../../ui/partial/PartialHead.tsx";
import { PartialMeaning, type Told, toldOf } from "../../../ui/partial/PartialMeaning.tsx";
import { grams } from "../../../ui/partial/partialWords.ts";
import { TriedNote } from "../../../ui/partial/TriedNote.tsx";
import { UnknownMarks } from "../../../ui/partial/UnknownMarks.tsx";
import { duration, volts } from "../rundownWords.ts";
import { Ends } from "./Ends.tsx";
import { partialRunSentence } from "./partialRunWords.ts";
import { type PartialRun, partialRun, type RunMoment } from "./run.ts";

export interface PartialRundownProps {
  readonly book: Book;
  readonly outcome: Outcome;
  /** of the stored build */
  readonly id: string;
  readonly tried: Changes;
  readonly startCharge: number;
  readonly targetMargin: number;
  readonly cycle: readonly CycleSegment[];
}

/** Run-down of a build that lacks something: the minutes where friction alone is missing, else what holds at the end of the charge. */
export default function PartialRundown({ book, outcome, id, tried, ...asked }: PartialRundownProps) {
  const { startCharge, targetMargin, cycle } = asked;
  const reply = useMemo(
    () => knownOf({ ...outcome, build: { ...outcome.build, targetMargin } }),
    [outcome, targetMargin],
  );
  const known = reply && "known" in reply ? reply.known : null;
  const ran = useMemo(() => {
    const angles = known?.named.map(({ angle }) => angle) ?? [];
    return known && partialRun(outcome, { startCharge, targetMargin, cycle, angles });
  }, [outcome, known, startCharge, targetMargin, cycle]);
  const run = ran && "end" in ran ? ran : null;
  return (
    <>
      <div class="page-head">
        <PartialHead
          book={book}
          outcome={outcome}
          reply={reply}
          sentence={(each) => partialRunSentence(each, run)}
        />
        <TriedNote id={id} tried={tried} />
        {ran && "problem" in ran && <Problem message={ran.problem} />}
      </div>
      <section class="page-main" aria-label="What is known and what is missing">
        {known && (run ? <Ends known={known} run={run} /> : <Point known={known} />)}
        <Lacking outcome={outcome} id={id} known={known !== null} />
      </section>
      {known && (
        <section class="page-aside" aria-label="What it means">
          <PartialMeaning
            book={book}
            outcome={outcome}
            known={known}
            told={run ? endsOf(run) : toldOf(known)}
            warnings={run ? run.warnings : known.answer.warnings}
          />
        </section>
      )}
    </>
  );
}

function Point({ known }: { known: Known }) {
  if (known.answer.moments.length === 0) return null;
  return (
    <>
      <h2>
        {known.cellMinimum === null ? "Operating point" : "At the end of its charge"}
        <UnknownMarks known={known} gripless />
      </h2>
      <KnownFigures known={known} />
    </>
  );
}

function atText({ sample, suction }: RunMoment): string {
  return `${grams(suction)} of pull, ${volts(sample.cellVoltage)} a cell under load`;
}

function endsOf({ start, last, end }: PartialRun): Told[] {
  const told = [{ holds: start.holds, caption: `At the start: ${atText(start)}.` }];
  if (end.time === 0) return told;
  return [{ holds: last.holds, caption: `After ${duration(end.time)}: ${atText(last)}.` }, ...told];
}
