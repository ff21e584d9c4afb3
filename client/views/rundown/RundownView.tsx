import { useMemo, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { isDestroyed, type VerdictState } from "../../../shared/decide/verdict/states.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { Keep } from "../../../shared/physics/rundown/input.ts";
import { go, href, route } from "../../app/router.ts";
import { isChanged, isLacking, type Outcome } from "../../state/outcome.ts";
import { triedToQuery } from "../../state/partsTried.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Later } from "../../ui/Later.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { RestsOn } from "../../ui/RestsOn.tsx";
import { useSaid } from "../../ui/useSaid.ts";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { VerdictBand } from "../../ui/verdict/VerdictBand.tsx";
import { ShowWorking } from "../../ui/working/ShowWorking.tsx";
import type { Answered } from "./answer.ts";
import { type Tried, triedFrom, withTried } from "./asked.ts";
import { CellNote } from "./CellNote.tsx";
import { FallTable } from "./FallTable.tsx";
import { CourseTable } from "./keep/CourseTable.tsx";
import { setting, sideBySide } from "./keep/keepWords.ts";
import { LimitsSection } from "./limits/LimitsSection.tsx";
import { type Asked, type Question, questionOf } from "./question.ts";
import { RundownChart } from "./RundownChart.tsx";
import { alarmText, asIfText, endSentence, overSentence, rundownSentence } from "./rundownWords.ts";
import { runBoard } from "./runWorkings.ts";
import { useRun } from "./useRun.ts";
import { WhatIf } from "./WhatIf.tsx";
import { WindingNote } from "./WindingNote.tsx";

/** A suction to begin with where the build's own isn't known [Pa]. */
const DEFAULT_SUCTION = 1000;
/** Likewise a thrust [N]. */
const DEFAULT_THRUST = 2;
const partial = () => import("./partial/PartialRundown.tsx");

/** How long does it hold? The charge from start to end, and what is lost on the way. */
export default function RundownView() {
  return (
    <BuildOnScreen>{(book, build) => <RundownOf key={build.id} book={book} build={build} />}</BuildOnScreen>
  );
}

interface OfBuild {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

/** What is asked of the run: as tried, which the address keeps, else as the build has it. */
function useAsked(build: StoredOf<"builds">) {
  const [tried, setTried] = useState<Tried>(() => triedFrom(route.peek().query));
  const ask = (part: Partial<Tried>) => {
    const next = { ...tried, ...part };
    setTried(next);
    const { id, query } = route.peek();
    go(href("run-down", id ?? build.id, withTried(query, next)), { replace: true });
  };
  const asked: Required<Asked> = {
    startCharge: tried.startCharge ?? 1,
    targetMargin: tried.targetMargin ?? build.data.targetMargin,
    cycle: tried.cycle ?? build.data.cycle ?? [],
    keep: tried.keep,
  };
  return { tried, asked, ask };
}

function RundownOf({ book, build }: OfBuild) {
  const { tried, outcome } = useOutcomes(build);
  const state = useVerdict().verdict?.state ?? null;
  const { tried: set, asked, ask } = useAsked(build);
  const { startCharge, targetMargin, cycle, keep } = asked;
  const question = useMemo(
    () => questionOf(book, outcome, { startCharge, targetMargin, cycle, keep }),
    [book, outcome, startCharge, targetMargin, cycle, keep],
  );
  const { reply, busy } = useRun(question);
  const answered = question && reply && "answered" in reply ? reply.answered : null;
  const problem = question && reply && "problem" in reply ? reply.problem : null;
  if (isLacking(outcome))
    return (
      <div class="page page-halves">
        <Later
          load={partial}
          what="What is known"
          props={{ book, outcome, id: build.id, tried, startCharge, targetMargin, cycle }}
        />
      </div>
    );
  const isFirst = question !== null && !answered && !problem;
  return (
    <div class="page page-three rundown" aria-busy={question !== null && busy}>
      <div class="page-head">
        <VerdictBand book={book} outcome={outcome} />
        {answered && <RunText answered={answered} state={state} />}
        {isFirst && <p>Running {build.data.name} down…</p>}
        {problem && <Problem message={problem} />}
        {isChanged(tried) && (
          <p class="small">
            With what is <a href={href("match", build.id, triedToQuery(tried))}>tried in Match</a>, not as the
            build is stored; the charge is the one set here.
          </p>
        )}
      </div>
      {question ? (
        <WhatIf build={build} set={set} asked={asked} first={firstKeep(question, outcome)} onAsk={ask} />
      ) : (
        <section class="page-below" aria-label="What is missing">
          <Missing outcome={outcome} build={build.id} />
        </section>
      )}
      {isFirst && <div class="page-main rundown-place" />}
      {question && answered && (
        <Meaning
          book={book}
          build={build}
          outcome={outcome}
          question={question}
          answered={answered}
          busy={busy}
          state={state}
        />
      )}
    </div>
  );
}

/** What a controller is first asked to keep: what the build makes as it stands. */
function firstKeep({ input }: Question, { prediction }: Outcome): Keep {
  if ("thrust" in input.rotor) return { thrust: prediction?.suction || DEFAULT_THRUST };
  return { pressure: prediction?.point?.pressure ?? DEFAULT_SUCTION };
}

interface RunTextProps {
  readonly answered: Answered;
  /** of the build's verdict */
  readonly state: VerdictState | null;
}

/** What the run comes to, under the verdict: a build that does not last has no run. */
function RunText({ answered, state }: RunTextProps) {
  const { kept } = answered;
  const said =
    state !== null && isDestroyed(state)
      ? asIfText(state)
      : [
          rundownSentence(answered),
          overSentence(answered),
          ...(kept ? [sideBySide(answered, kept), setting(kept)] : []),
          alarmText(answered),
          endSentence(answered),
        ]
          .filter(Boolean)
          .join(" ");
  useSaid(said);
  return <p class="answer-figures">{said}</p>;
}

interface MeaningProps extends OfBuild, RunTextProps {
  readonly outcome: Outcome;
  readonly question: Question;
  readonly busy: boolean;
}

function Meaning({ book, build, outcome, question, answered, busy, state }: MeaningProps) {
  const motor = book.motors.find((each) => each.id === outcome.build.motor);
  const pack = book.packs.find((each) => each.id === outcome.build.pack);
  const { resolved } = outcome;
  const notes = [...answered.warnings, ...(resolved?.notes ?? []), ...(resolved?.pack?.notes ?? [])];
  return (
    <>
      <section class="page-main" aria-label="The picture">
        {busy && <div class="shell-loading" role="progressbar" aria-label="Running down" />}
        <RundownChart answered={answered} build={build.data.name} />
        {motor && <WindingNote answered={answered} motor={motor} />}
        {pack && resolved?.pack && <CellNote pack={resolved.pack} name={pack.data.name} id={pack.id} />}
      </section>
      <section class="page-aside" aria-label="What it means">
        <h2>
          Stops holding
          <VerdictMarks book={book} outcome={outcome} />
        </h2>
        <FallTable answered={answered} state={state} />
        <ShowWorking of={() => runBoard(answered)} />
        {answered.kept && (
          <>
            <h2>Throttle, side by side</h2>
            <CourseTable answered={answered} kept={answered.kept} />
          </>
        )}
        <RestsOn book={book} outcome={outcome} />
        {notes.length > 0 && (
          <>
            <h2>Mind</h2>
            <ul class="notes">
              {notes.map((note) => (
                <li key={note.code + note.message}>{note.message}</li>
              ))}
            </ul>
          </>
        )}
      </section>
      <LimitsSection book={book} outcome={outcome} question={question} />
    </>
  );
}
