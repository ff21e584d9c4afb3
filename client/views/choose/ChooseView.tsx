import type { ComponentChildren } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/book.ts";
import type { ChooseJob } from "../../../shared/model/api/choose.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { go, href, navigate, type Route, route } from "../../app/router.ts";
import { currentBook } from "../../state/book.ts";
import { current } from "../../state/build.ts";
import { Answer } from "../../ui/Answer.tsx";
import { EmptyBench } from "../../ui/empty/EmptyBench.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { ChooseForm } from "./form/ChooseForm.tsx";
import { Progress } from "./parts/Progress.tsx";
import { Results } from "./Results.tsx";
import { isOver, useJob } from "./state/job.ts";
import { remembered, type Shown, show, shownFrom, shownQuery } from "./state/shown.ts";
import { type Asking, useAsking } from "./useAsking.ts";

/** Which parts hold? Every combination of the parts to try, solved in full. */
export default function ChooseView() {
  const book = currentBook.value;
  const build = current.value;
  if (!book) return null;
  if (!build) return <EmptyBench book={book} />;
  return <Choosing book={book} build={build} />;
}

/** The job that is shown: the one of the address, or, while that one runs, the one before it. */
function useShownJob(job: ChooseJob | null): ChooseJob | null {
  const [done, setDone] = useState<ChooseJob | null>(null);
  useEffect(() => {
    if (job?.state === "done") setDone(job);
  }, [job?.id, job?.state]);
  return job?.state === "done" ? job : done;
}

/** How the combinations are looked at: as the address says; while another job has the address, apart from it. */
function useShown(own: boolean, query: URLSearchParams): [Shown, (next: Shown) => void] {
  const addressed = useMemo(() => shownFrom(query), [query]);
  const [kept, keep] = useState(addressed);
  useEffect(() => {
    if (own) keep(addressed);
  }, [own, addressed]);
  return own ? [addressed, show] : [kept, keep];
}

/** The route as long as it is this view's; while the next view's chunk is fetched, the last that was. */
function useOwnRoute(): Route {
  const last = useRef(route.value);
  if (route.value.view === "choose") last.current = route.value;
  return last.current;
}

/** Without a job in the address, the last one that was looked at comes back. */
function useLastJob(id: string | null): void {
  useEffect(() => {
    const last = remembered()?.id;
    if (id === null && last) go(href("choose", last), { replace: true });
  }, [id]);
}

function Choosing({ book, build }: { book: Book; build: StoredOf<"builds"> }) {
  const { id, query } = useOwnRoute();
  useLastJob(id);
  const [times, setTimes] = useState(0);
  const found = useJob(id, times);
  const { job } = found;
  const asking = useAsking(book, build, job, () => setTimes((count) => count + 1));
  const done = useShownJob(job);
  const [shown, onShow] = useShown(done !== null && done.id === id, query);
  const running = job !== null && !isOver(job);
  const cancel = () => {
    if (!job) return;
    void asking.cancel(job, done?.id ?? null);
    if (done) go(href("choose", done.id, shownQuery(shown)), { replace: true });
    else navigate("choose");
  };
  const gone = () => <Gone asking={asking} />;
  const state = <State book={book} of={found} running={running} onCancel={cancel} onGone={gone} />;
  return (
    <div class={done ? "page page-three" : "page"}>
      {done ? (
        <Results
          key={`${done.id} ${done.startedAt}`}
          book={book}
          job={done}
          shown={shown}
          onShow={onShow}
          stale={running}
          above={state}
          onGone={gone}
          onRelax={(change) => void asking.solve(change(asking.draft))}
        />
      ) : (
        <div class="page-head choose-answer">
          <Answer sentence="Which motor, rotor, pack and skirt work?">
            Tick the parts to try, say what must hold: every combination of them is solved like a build, its
            own mass included.
          </Answer>
          {state}
        </div>
      )}
      <div class={done ? "page-side" : "page-below choose-unsolved"}>
        <ChooseForm
          book={book}
          draft={asking.draft}
          problemAt={asking.problemAt}
          onDraft={asking.change}
          counts={asking.read.counts}
          request={asking.read.request}
          refusal={asking.refusal}
          busy={asking.busy || running}
          onSolve={() => void asking.solve()}
        />
      </div>
    </div>
  );
}

interface StateProps {
  readonly book: Book;
  readonly of: ReturnType<typeof useJob>;
  readonly running: boolean;
  readonly onCancel: () => void;
  readonly onGone: () => ComponentChildren;
}

/** How far the job of the address is, or why it came to nothing. */
function State({ book, of: { job, unknown, lost, problem, best }, running, onCancel, onGone }: StateProps) {
  return (
    <>
      {running && job && <Progress job={job} book={book} best={best} lost={lost} onCancel={onCancel} />}
      {!running && lost && <Problem message="The server does not answer. Trying again every second." />}
      {(unknown || job?.state === "cancelled") && onGone()}
      {problem && <Problem message={problem} />}
      {job?.state === "failed" && <Problem message={job.error ?? "The combinations could not be solved."} />}
    </>
  );
}

/** The server has forgotten the job; its question still stands in the form. */
function Gone({ asking }: { readonly asking: Asking }) {
  return (
    <Problem message="The server no longer has this search: it was cancelled, replaced by newer ones, or the server was restarted. Your settings are still in the form.">
      <button type="button" onClick={() => void asking.solve()}>
        Solve it again
      </button>
    </Problem>
  );
}
