import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { type Book, findById } from "../../../shared/book/book.ts";
import type { ChooseJob } from "../../../shared/model/api/choose.ts";
import { href, navigate } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { chargeText } from "../../ui/chargeWords.ts";
import { Problem } from "../../ui/Problem.tsx";
import type { ChosenSet, Column, PointsAnswer } from "./answers.ts";
import { type ColumnSpec, columnSpec, columnsOf, valueText } from "./columns.ts";
import { type Draft, isPropeller } from "./form/draft.ts";
import { storeSet } from "./openSet.ts";
import { Missed } from "./parts/Missed.tsx";
import { Pinned } from "./parts/Pinned.tsx";
import { PinnedTable } from "./parts/PinnedTable.tsx";
import { SetPanel } from "./parts/SetPanel.tsx";
import { type Rank, Shortlist } from "./parts/Shortlist.tsx";
import { AxisPicker, SetPlot } from "./plot/SetPlot.tsx";
import { SetTable } from "./rows/SetTable.tsx";
import type { Sorting } from "./rows/useRows.ts";
import { MOST_PINNED, type Shown, shownQuery, withPin } from "./state/shown.ts";
import { type Results as Known, useResults } from "./useResults.ts";
import { inOrOut, wantedNames } from "./words/limits.ts";
import { answerSentence, tookText } from "./words/searchSentences.ts";
import { restText, sizedRotorText } from "./words/set.ts";

const FIRST_SORTING: Sorting = { sort: "margin", order: "most", only: "admissible", kind: "any" };

export interface ResultsProps {
  readonly book: Book;
  /** one that is done */
  readonly job: ChooseJob;
  readonly shown: Shown;
  readonly onShow: (next: Shown) => void;
  /** another job is on its way; this is the picture before it */
  readonly stale: boolean;
  readonly onRelax: (change: (draft: Draft) => Draft) => void;
  readonly onGone: () => ComponentChildren;
  readonly above: ComponentChildren;
}

/** What came out: the answer, the plot, the table; the set looked at, the shortlist, the pinned sets. */
export function Results(props: ResultsProps) {
  const { book, job, shown, stale, onShow } = props;
  const [rank, setRank] = useState<Rank>("margin5");
  const [problem, setProblem] = useState<string | null>(null);
  const [sorting, setSorting] = useState<Sorting>(() =>
    job.admissible > 0 ? FIRST_SORTING : { ...FIRST_SORTING, only: "all" },
  );
  const tried = job.request.rotors.map(({ rotor }) => isPropeller(book, rotor));
  const bothKinds = tried.includes(true) && tried.includes(false);
  const known = useResults(job, shown, rank, bothKinds);
  const base = findById(book.builds, job.request.build)?.data ?? null;
  const { wants } = job.request;
  const columns = columnsOf(wants);
  const look = (index: number) => onShow({ ...shown, look: index });
  const pin = (index: number) => onShow({ ...shown, pins: withPin(shown.pins, index) });
  const open = async (set: ChosenSet) => {
    if (!base) return;
    try {
      navigate("match", await storeSet(book, base, job.id, set));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  const gone = known.problem?.code === "unknown-job";
  const { looked, missed } = known;
  return (
    <>
      <div class="page-head choose-answer" aria-live="polite">
        <Answer sentence={answerSentence(job, known.lightest, known.shortlist.data?.items[0] ?? null)}>
          <Figures book={book} job={job} known={known} shown={shown} onLook={look} />
        </Answer>
        {job.notes.map(({ code, message }) => (
          <p key={code} class="small near">
            {message}
          </p>
        ))}
        {props.above}
        {gone && props.onGone()}
        {known.problem && !gone && <Problem message={known.problem.message} />}
        {problem && <Problem message={problem} />}
      </div>
      <section class="page-main choose-picture" aria-label="The combinations" aria-busy={stale}>
        {job.admissible === 0 && missed.data && (
          <Missed
            book={book}
            base={base}
            wants={wants}
            missed={missed.data}
            onRelax={props.onRelax}
            onLook={look}
          />
        )}
        <Plot
          job={job}
          columns={columns}
          points={known.points.data}
          from={known.points.from}
          shown={shown}
          onShow={onShow}
          looked={looked}
          pinned={known.pinned}
          describe={(set) => [
            sizedRotorText(book, set),
            restText(book, set),
            `${valueText(shown.y, set.values[shown.y])}, ${valueText(shown.x, set.values[shown.x])}`,
            inOrOut(set.broken, wantedNames(wants, base)),
          ]}
          onLook={look}
          onPin={pin}
        />
        <SetTable
          key={job.id}
          book={book}
          job={job.id}
          charge={base?.charge ?? null}
          counts={job}
          bothKinds={bothKinds}
          columns={columns}
          sorting={sorting}
          onSort={setSorting}
          looked={looked?.index ?? null}
          pins={shown.pins}
          onLook={look}
          onPin={pin}
          onOpen={(set) => void open(set)}
        />
        {job.admissible > 0 && missed.data && (
          <details>
            <summary>What keeps combinations out</summary>
            <Missed
              book={book}
              base={base}
              wants={wants}
              missed={missed.data}
              onRelax={props.onRelax}
              onLook={look}
            />
          </details>
        )}
      </section>
      <section class="page-aside" aria-label="What it means">
        {looked && (
          <SetPanel
            book={book}
            base={base}
            wants={wants}
            set={looked}
            pin={shown.pins.indexOf(looked.index)}
            canPin={shown.pins.includes(looked.index) || shown.pins.length < MOST_PINNED}
            onPin={() => pin(looked.index)}
            onOpen={() => void open(looked)}
          />
        )}
        {job.admissible > 0 && (
          <Shortlist
            book={book}
            fetched={known.shortlist}
            rank={rank}
            onRank={setRank}
            wantedChance={wants.leastChance}
            isKept={wants.leastKeptTime !== null}
            onLook={look}
          />
        )}
        <Pinned
          book={book}
          base={base}
          job={job.id}
          pins={shown.pins}
          sets={known.pinned}
          onLook={look}
          onPin={pin}
        />
        <Caution>Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane.</Caution>
        <Caution>
          The minutes run from {base ? chargeText(base.charge) : "the start charge"} to its end; a vehicle on
          a wall or ceiling may let go before: tether it.
        </Caution>
      </section>
      {base && known.pinned.length > 1 && (
        <PinnedTable book={book} base={base} job={job.id} wants={wants} sets={known.pinned} onPin={pin} />
      )}
    </>
  );
}

interface FiguresProps {
  readonly book: Book;
  readonly job: ChooseJob;
  readonly known: Known;
  readonly shown: Shown;
  readonly onLook: (index: number) => void;
}

/** The line under the answer: which sets are the lightest, the surest and the strongest. */
function Figures({ book, job, known, shown, onLook }: FiguresProps) {
  const { lightest, best, kinds, shortlist } = known;
  const surest = shortlist.data?.items[0]?.set ?? null;
  const most = job.admissible > 0 ? best : null;
  const same = surest !== null && surest.index === most?.index;
  const named: [string, ChosenSet | null][] = [
    ["Lightest", lightest],
    [same ? "Surest, and most to spare" : "Surest", surest],
    ["Most to spare", same || kinds ? null : most],
    ["Most to spare in a duct", kinds?.ducted ?? null],
    ["Most to spare with an open propeller", kinds?.open ?? null],
  ];
  const lacking =
    kinds && (kinds.ducted === null ? "rotor in a duct" : kinds.open === null ? "open propeller" : null);
  return (
    <>
      {named.map(
        ([what, set]) =>
          set && (
            <span key={what}>
              {what}:{" "}
              <a
                href={href("choose", job.id, shownQuery({ ...shown, look: set.index }))}
                onClick={(event) => {
                  event.preventDefault();
                  onLook(set.index);
                }}
              >
                {sizedRotorText(book, set)}
              </a>
              {". "}
            </span>
          ),
      )}
      {lacking && `No ${lacking} works. `}
      {tookText(job)}
    </>
  );
}

interface PlotProps {
  readonly job: ChooseJob;
  readonly columns: readonly ColumnSpec[];
  readonly points: PointsAnswer | null;
  /** path that the points came from: it names their columns */
  readonly from: string | null;
  readonly shown: Shown;
  readonly onShow: (next: Shown) => void;
  readonly looked: ChosenSet | null;
  readonly pinned: readonly ChosenSet[];
  readonly describe: (set: ChosenSet) => readonly string[];
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
}

function columnsIn(from: string | null): { x: Column; y: Column } {
  const query = new URLSearchParams(from?.split("?")[1]);
  return { x: columnSpec(query.get("x")).key, y: columnSpec(query.get("y")).key };
}

function Plot({
  job,
  columns,
  points,
  from,
  shown,
  onShow,
  looked,
  pinned,
  describe,
  onLook,
  onPin,
}: PlotProps) {
  return (
    <>
      <div class="choose-axes">
        <AxisPicker columns={columns} label="up" value={shown.y} onChange={(y) => onShow({ ...shown, y })} />
        <AxisPicker
          columns={columns}
          label="along"
          value={shown.x}
          onChange={(x) => onShow({ ...shown, x })}
        />
      </div>
      {points && (
        <SetPlot
          job={job.id}
          answer={points}
          drawn={columnsIn(from)}
          target={job.request.wants.targetMargin}
          looked={looked}
          pinned={pinned}
          describe={describe}
          onLook={onLook}
          onPin={onPin}
        />
      )}
    </>
  );
}
