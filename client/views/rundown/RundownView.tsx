import { useMemo, useState } from "preact/hooks";
import { namedAttitudes } from "../../../shared/book/attitudes.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { isDestroyed, type VerdictState } from "../../../shared/decide/verdict/states.ts";
import type { Build } from "../../../shared/model/build.ts";
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
import { SettingField } from "../../ui/SettingField.tsx";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { VerdictBand } from "../../ui/verdict/VerdictBand.tsx";
import { ShowWorking } from "../../ui/working/ShowWorking.tsx";
import type { Answered } from "./answer.ts";
import { type Tried, triedFrom, withTried } from "./asked.ts";
import { CellNote } from "./CellNote.tsx";
import { CyclePanel } from "./CyclePanel.tsx";
import { FallTable } from "./FallTable.tsx";
import { START_CHARGE, TARGET_MARGIN } from "./handles.ts";
import { CourseTable } from "./keep/CourseTable.tsx";
import { KeepPanel } from "./keep/KeepPanel.tsx";
import { setting, sideBySide } from "./keep/keepWords.ts";
import { LimitsSection } from "./limits/LimitsSection.tsx";
import { type Question, questionOf } from "./question.ts";
import { RundownChart } from "./RundownChart.tsx";
import { alarmText, asIfText, endSentence, overSentence, rundownSentence } from "./rundownWords.ts";
import { runBoard } from "./runWorkings.ts";
import { useRun } from "./useRun.ts";
import { WindingNote } from "./WindingNote.tsx";

/** A suction to begin with where the build's own isn't known [Pa]. */
const DEFAULT_SUCTION = 1000;
/** Likewise a thrust [N]. */
const DEFAULT_THRUST = 2;
/** The slider's end for a margin; more can be typed. */
const SLIDER_MARGIN = 4;
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

function RundownOf({ book, build }: OfBuild) {
  const { tried, outcome } = useOutcomes(build);
  const state = useVerdict().verdict?.state ?? null;
  const [asked, setAsked] = useState<Tried>(() => triedFrom(route.peek().query));
  const ask = (part: Partial<Tried>) => {
    const next = { ...asked, ...part };
    setAsked(next);
    const { id, query } = route.peek();
    go(href("run-down", id ?? build.id, withTried(query, next)), { replace: true });
  };
  const startCharge = asked.startCharge ?? 1;
  const targetMargin = asked.targetMargin ?? build.data.targetMargin;
  const cycle = asked.cycle ?? build.data.cycle ?? [];
  const { keep } = asked;
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
  return (
    <div class="page page-three rundown" aria-busy={question !== null && busy}>
      <div class="page-head" aria-live="polite">
        <VerdictBand book={book} outcome={outcome} />
        {answered && <RunText answered={answered} state={state} />}
        {question && !answered && !problem && <p>Running {build.data.name} down…</p>}
        {problem && <Problem message={problem} />}
        {isChanged(tried) && (
          <p class="small">
            With what is <a href={href("match", build.id, triedToQuery(tried))}>tried in Match</a>, not as the
            build is stored; the charge is the one set here.
          </p>
        )}
      </div>
      {question ? (
        <section class="page-side" aria-label="What if">
          <h2>What if…</h2>
          <SettingField
            label="Charge at the start"
            spec={START_CHARGE}
            value={startCharge}
            slider={{ min: 1, max: 100, step: 1 }}
            hint="state of charge when it is set down"
            onValue={(charge) => ask({ startCharge: charge === 1 ? null : charge })}
          />
          <SettingField
            label="Margin wanted"
            spec={TARGET_MARGIN}
            value={targetMargin}
            slider={{ min: 1, max: Math.max(SLIDER_MARGIN, targetMargin), step: 0.05 }}
            hint={
              asked.targetMargin === null
                ? "as in the build"
                : `the build wants ${build.data.targetMargin}\u202f×`
            }
            onValue={(value) => ask({ targetMargin: value === build.data.targetMargin ? null : value })}
          />
          <KeepPanel
            wish={keep}
            places={placesOf(build.data).filter(({ angle }) => angle > 0)}
            wanted={targetMargin}
            first={firstKeep(question, outcome)}
            onWish={(wish) => ask({ keep: wish })}
          />
          <CyclePanel
            build={build}
            cycle={cycle}
            places={placesOf(build.data)}
            onCycle={(typed) => ask({ cycle: typed })}
          />
        </section>
      ) : (
        <section class="page-below" aria-label="What is missing">
          <Missing outcome={outcome} build={build.id} />
        </section>
      )}
      {question && !answered && !problem && <div class="page-main rundown-place" />}
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

/** Attitudes that a cycle can name. */
function placesOf(build: Build) {
  return [{ title: "Floor", angle: 0 }, ...namedAttitudes(build).filter(({ angle }) => angle > 0)];
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
