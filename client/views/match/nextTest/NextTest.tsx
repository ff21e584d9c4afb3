import type { NextTest as Found, NextTests } from "../../../../shared/book/nextTest/nextTests.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { UncertaintyPart } from "../../../../shared/book/uncertainty/parts.ts";
import type { Spread } from "../../../../shared/decide/spread.ts";
import { href } from "../../../app/router.ts";
import type { Outcome } from "../../../state/outcome.ts";
import type { UncertaintyState } from "../../../state/useUncertainty.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { shareParts } from "../../../ui/uncertaintyWords.ts";
import { linkOf, type OfBuild } from "./links.ts";
import {
  correctsText,
  cutText,
  headline,
  knownText,
  lesserText,
  NOTHING_TO_SHRINK,
  nothingText,
  verdictWords,
} from "./nextTestWords.ts";
import { type FoundNext, useNextTests } from "./useNextTests.ts";

/** Tests that are read at once; the lesser ones open. */
const SHOWN = 3;

export interface NextTestProps {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly sure: UncertaintyState;
  /** of the stored build */
  readonly id: string;
}

/** The bench test that would shrink the uncertainty about the wanted attitude most. */
export default function NextTest(props: NextTestProps) {
  const { book, outcome, sure } = props;
  return <FoundTests {...props} found={useNextTests(book, outcome, sure)} />;
}

/** The same, as it was found. */
export function FoundTests({ outcome, sure, id, found }: Omit<NextTestProps, "book"> & { found: FoundNext }) {
  const { question, reply, asked, busy } = found;
  if (!question && !sure.nothingStated) return null;
  return (
    <section class="next-test" aria-label="Next test" aria-busy={busy}>
      <h2>Next test</h2>
      {busy && <div class="shell-loading" role="progressbar" aria-label="Looking for the next test" />}
      {!question && <NothingStated id={id} />}
      {question && reply && "problem" in reply && <Problem message={reply.problem} />}
      {question && reply && asked && "answered" in reply && (
        <Answered
          answered={reply.answered}
          where={verdictWords(outcome, asked, reply.answered.over)}
          parts={sure.doubt ? shareParts((sure.doubt.over ?? sure.doubt).shares, sure.sources) : []}
          build={{ ...outcome.build, id }}
        />
      )}
    </section>
  );
}

function NothingStated({ id }: { id: string }) {
  return (
    <>
      <p>{NOTHING_TO_SHRINK}</p>
      <a class="button" href={href("parts", `builds/${id}`)}>
        State uncertainties
      </a>
    </>
  );
}

interface AnsweredProps {
  readonly answered: NextTests;
  readonly where: string;
  readonly parts: readonly UncertaintyPart[];
  readonly build: OfBuild;
}

function Answered({ answered, where, parts, build }: AnsweredProps) {
  const { before, tests } = answered;
  const [first] = tests;
  const lesser = tests.slice(SHOWN);
  if (!before || !first) return <p>{nothingText(answered, where, parts)}</p>;
  return (
    <div>
      <p>{headline(first, where)}</p>
      <Lines tests={tests.slice(0, SHOWN)} before={before} build={build} />
      {lesser.length > 0 && (
        <details class="next-tests-more">
          <summary>{lesserText(lesser)}</summary>
          <Lines tests={lesser} before={before} build={build} />
        </details>
      )}
      <p class="quiet small">
        If it reads what is expected; one that surprises may leave more uncertainty. ± holds 90&#8239;% of the
        samples, which tell a cut to about 1&#8239;%. The attitude is chosen at Ways to hold.
      </p>
    </div>
  );
}

interface LinesProps {
  readonly tests: readonly Found[];
  readonly before: Spread;
  readonly build: OfBuild;
}

function Lines({ tests, before, build }: LinesProps) {
  return (
    <ul class="next-tests">
      {tests.map((test) => (
        <Line key={test.key} test={test} before={before} build={build} />
      ))}
    </ul>
  );
}

interface LineProps {
  readonly test: Found;
  readonly before: Spread;
  readonly build: OfBuild;
}

function Line({ test, before, build }: LineProps) {
  const { address, words } = linkOf(test, build);
  const corrects = correctsText(test);
  return (
    <li>
      <span class="next-test-head">
        <span class="next-test-cut">{cutText(test)}</span>
        <span class="next-test-title">{test.title}</span>
        <a href={address}>
          {words}
          <span class="visually-hidden">: {test.title}</span>
        </a>
      </span>
      <small>{knownText(before, test)}</small>
      <small class="quiet">
        {test.takes}
        {corrects && ` (it ${corrects})`}
      </small>
    </li>
  );
}
