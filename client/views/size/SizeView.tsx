import { useEffect, useMemo, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { RotorKind } from "../../../shared/book/size/families.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { asProblem } from "../../../shared/numeric/errors.ts";
import { go, href, parseRoute, route } from "../../app/router.ts";
import { currentBook } from "../../state/book.ts";
import { current } from "../../state/build.ts";
import { useTask } from "../../threads/useTask.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { useSaid } from "../../ui/useSaid.ts";
import type { Answered, Reply } from "./answer.ts";
import { type Asked, askedFrom, askedQuery } from "./asked.ts";
import { Lacking } from "./Lacking.tsx";
import { Meaning } from "./Meaning.tsx";
import { questionOf } from "./question.ts";
import { type Settings, settingsOf } from "./settings.ts";
import { needSentence, REVERSED, sizeSentence } from "./sizeWords.ts";
import { subjectOf } from "./subject.ts";
import { Wanted } from "./Wanted.tsx";

const FAILED: Reply = { problem: "The sizes could not be worked out in this browser; reload the page." };

/** Which size? From what a vehicle needs back to rotor, speed and winding. */
export default function SizeView() {
  const [book, build] = [currentBook.value, current.value];
  return book && <SizeOf key={build?.id ?? ""} stored={book} own={build} />;
}

interface OfBook {
  readonly stored: Book;
  /** the build on the screen; null where the book has none */
  readonly own: StoredOf<"builds"> | null;
}

function SizeOf({ stored, own }: OfBook) {
  const [asked, setAsked] = useState<Asked>(() => askedFrom(route.peek().query));
  const ask = (part: Partial<Asked>) => setAsked((before) => ({ ...before, ...part }));
  useEffect(() => {
    // Already on its way to another view, the address is that view's.
    if (parseRoute(location.pathname).view !== "size") return;
    go(href("size", null, askedQuery(asked)), { replace: true });
  }, [asked]);
  const { need, drawn } = asked;
  const subject = useMemo(() => subjectOf(stored, own, asked), [stored, own, need, drawn]);
  const { book, build } = subject;
  const settings = useMemo(() => settingsOf(book, build.data, asked), [book, build, asked]);
  const made = useMemo(() => asProblem(() => questionOf(book, settings)), [book, settings]);
  const put = "answered" in made ? made.answered : null;
  const reversed = put?.reversed ?? null;
  const { reply, busy } = useTask("size", reversed === null ? (put?.question ?? null) : null, FAILED);
  const answered = put && reply && "answered" in reply ? reply.answered : null;
  const problem =
    "problem" in made ? made.problem : put && reply && "problem" in reply ? reply.problem : null;
  return (
    <div class="page size" aria-busy={put !== null && busy && reversed === null}>
      <Head {...{ answered, problem, settings, reversed }} isLacking={put === null} />
      <Wanted subject={subject} own={own} settings={settings} asked={asked} put={put} onAsk={ask} />
      {put && answered && <Meaning {...{ subject, put, settings, answered, asked }} onAsk={ask} />}
      {!put && <Lacking subject={subject} settings={settings} />}
      {put && !answered && <div class="page-main size-place" />}
    </div>
  );
}

interface HeadProps {
  readonly answered: Answered | null;
  readonly problem: string | null;
  readonly settings: Settings;
  readonly reversed: RotorKind | null;
  readonly isLacking: boolean;
}

/** The answer, or why there is none yet. */
function Head({ answered, problem, settings, reversed, isLacking }: HeadProps) {
  const waiting = isLacking ? `${settings.build.name} can't be sized yet.` : "Looking through the sizes…";
  useSaid(answered ? sizeSentence(answered) : waiting);
  return (
    <div class="page-head">
      {answered ? (
        <Answer sentence={sizeSentence(answered)}>{needSentence(answered, settings)}</Answer>
      ) : (
        <Answer sentence={problem ? "There is no size to look for." : waiting} />
      )}
      {problem && <Problem message={problem} />}
      {reversed !== null && <Problem message={REVERSED[reversed]()} />}
    </div>
  );
}
