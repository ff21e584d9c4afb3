import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { type Book, findById } from "../../../shared/book/book.ts";
import type { ChooseJob } from "../../../shared/model/api/choose.ts";
import type { Build } from "../../../shared/model/build.ts";
import { navigate } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { useSaid } from "../../ui/useSaid.ts";
import type { Combination } from "./answers.ts";
import { type Draft, isPropeller } from "./form/draft.ts";
import { storeCombination } from "./openCombination.ts";
import { PinnedTable } from "./parts/PinnedTable.tsx";
import type { Rank } from "./parts/Shortlist.tsx";
import { Figures } from "./results/Figures.tsx";
import { Meaning } from "./results/Meaning.tsx";
import type { OfResults } from "./results/ofResults.ts";
import { Picture } from "./results/Picture.tsx";
import type { Sorting } from "./rows/useRows.ts";
import { type Shown, withPin } from "./state/shown.ts";
import { useResults } from "./useResults.ts";
import { answerSentence } from "./words/searchSentences.ts";

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

/** Makes a combination a build of the book and goes to it; says why where that is refused. */
function useOpening(book: Book, base: Build | null, job: string) {
  const [problem, setProblem] = useState<string | null>(null);
  const open = async (combination: Combination) => {
    if (!base) return;
    try {
      navigate("match", await storeCombination(book, base, job, combination));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  return { problem, open };
}

/** What came out: the answer, the plot, the table; the combination looked at, the shortlist, the pinned combinations. */
export function Results(props: ResultsProps) {
  const { book, job, shown, stale, onShow, onRelax } = props;
  const [rank, setRank] = useState<Rank>("margin5");
  const [sorting, setSorting] = useState<Sorting>(() =>
    job.admissible > 0 ? FIRST_SORTING : { ...FIRST_SORTING, only: "all" },
  );
  const tried = job.request.rotors.map(({ rotor }) => isPropeller(book, rotor));
  const bothKinds = tried.includes(true) && tried.includes(false);
  const known = useResults(job, shown, rank, bothKinds);
  const base = findById(book.builds, job.request.build)?.data ?? null;
  const { problem, open } = useOpening(book, base, job.id);
  const onPin = (index: number) => onShow({ ...shown, pins: withPin(shown.pins, index) });
  const ofResults: OfResults = {
    book,
    base,
    job,
    known,
    shown,
    onLook: (index) => onShow({ ...shown, look: index }),
    onPin,
    onOpen: (combination) => void open(combination),
  };
  return (
    <>
      <Head {...ofResults} above={props.above} problem={problem} onGone={props.onGone} />
      <Picture
        {...ofResults}
        bothKinds={bothKinds}
        sorting={sorting}
        onSort={setSorting}
        onShow={onShow}
        stale={stale}
        onRelax={onRelax}
      />
      <Meaning {...ofResults} rank={rank} onRank={setRank} />
      {base && known.pinned.length > 1 && (
        <PinnedTable
          book={book}
          base={base}
          job={job.id}
          wants={job.request.wants}
          combinations={known.pinned}
          onPin={onPin}
        />
      )}
    </>
  );
}

interface HeadProps extends OfResults {
  readonly above: ComponentChildren;
  /** why a combination couldn't be opened */
  readonly problem: string | null;
  readonly onGone: () => ComponentChildren;
}

/** The answer, what is noted of the search, and what went wrong since. */
function Head({ above, problem, onGone, ...ofResults }: HeadProps) {
  const { job, known } = ofResults;
  const gone = known.problem?.code === "unknown-job";
  const sentence = answerSentence(job, known.lightest, known.shortlist.data?.items[0] ?? null);
  useSaid(sentence, "said");
  return (
    <div class="page-head choose-answer">
      <Answer sentence={sentence}>
        <Figures {...ofResults} />
      </Answer>
      {job.notes.map(({ code, message }) => (
        <p key={code} class="small near">
          {message}
        </p>
      ))}
      {above}
      {gone && onGone()}
      {known.problem && !gone && <Problem message={known.problem.message} />}
      {problem && <Problem message={problem} />}
    </div>
  );
}
