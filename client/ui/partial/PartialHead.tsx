import type { Book } from "../../../shared/book/resolve.ts";
import type { Outcome } from "../../state/outcome.ts";
import { Answer } from "../Answer.tsx";
import { Problem } from "../Problem.tsx";
import { useSaid } from "../useSaid.ts";
import { VerdictMarks } from "../VerdictMarks.tsx";
import type { Known, KnownReply } from "./known.ts";
import { nothingSentence, unknownText } from "./partialWords.ts";
import { UnknownMarks } from "./UnknownMarks.tsx";

export interface PartialHeadProps {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly reply: KnownReply;
  /** the view's own sentence on what is known */
  readonly sentence: (known: Known) => string;
}

/** The answer of a build that lacks something: what is known first, then what isn't. */
export function PartialHead({ book, outcome, reply, sentence }: PartialHeadProps) {
  useSaid(reply && "known" in reply ? sentence(reply.known) : null);
  if (!reply) return <Answer sentence={nothingSentence(outcome.build.name)}>This is missing:</Answer>;
  if ("problem" in reply)
    return (
      <>
        <Answer sentence={nothingSentence(outcome.build.name)} />
        <Problem message={reply.problem} />
      </>
    );
  return (
    <Answer sentence={sentence(reply.known)}>
      {unknownText(reply.known)}
      <UnknownMarks known={reply.known} />
      <VerdictMarks book={book} outcome={outcome} />
    </Answer>
  );
}
