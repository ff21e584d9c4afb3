import { useMemo } from "preact/hooks";
import { solvable } from "../../../../shared/book/resolve.ts";
import { barsPicture } from "../../../charts/bars.ts";
import { barsHeight } from "../../../charts/draw/bars.ts";
import { Figure } from "../../../charts/Figure.tsx";
import type { Outcome } from "../../../state/outcome.ts";
import { useTask } from "../../../threads/useTask.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { wanted, wantedOf, wantedWords } from "../ways/wanted.ts";
import type { Question, Reply } from "./answer.ts";
import {
  type Bar,
  barLines,
  barPlot,
  barsInWords,
  barsOf,
  barsSentence,
  barsTable,
  drawnBars,
  type Shares,
  tiedText,
} from "./bars.ts";
import { withNames } from "./names.ts";

const FAILED: Reply = {
  problem: "The sensitivities could not be worked out in this browser; reload the page.",
};

export interface SensitivitiesProps {
  readonly outcome: Outcome;
  /** each input's share of the variance of the worst driving margin; null where it is not known */
  readonly shares: Shares | null;
}

/** How much each number of the build moves the margin, and how much of the uncertainty is its own. */
export default function Sensitivities({ outcome, shares }: SensitivitiesProps) {
  const chosen = wantedOf(outcome, wanted.value);
  const question = useMemo((): Question | null => {
    const build = outcome.resolved && solvable(outcome.resolved);
    return build && { build, wanted: chosen };
  }, [outcome, chosen.attitude, chosen.mode]);
  const { reply, asked, busy } = useTask("sensitivities", question, FAILED);
  if (!question) return null;
  return (
    <section class="moves" aria-label="What moves the margin" aria-busy={busy}>
      <h2>What moves the margin</h2>
      {busy && (
        <div class="shell-loading" role="progressbar" aria-label="Working out what moves the margin" />
      )}
      {reply && "problem" in reply && <Problem message={reply.problem} />}
      {reply && asked && "answered" in reply && (
        <Found
          bars={barsOf(reply.answered, shares)}
          notes={reply.answered.warnings.map(({ message }) => withNames(message))}
          where={wantedWords(outcome, asked.wanted)}
          name={outcome.build.name}
        />
      )}
    </section>
  );
}

interface FoundProps {
  readonly bars: readonly Bar[];
  readonly notes: readonly string[];
  readonly where: string;
  readonly name: string;
}

function Found({ bars, notes, where, name }: FoundProps) {
  const drawn = drawnBars(bars);
  const tied = tiedText(drawn);
  const known = drawn.some(({ share }) => share !== null);
  return (
    <>
      {bars.length > 0 && (
        <>
          <p>{barsSentence(drawn)}</p>
          <p class="quiet small">
            Per cent of margin per per cent of each number, for {where}
            {known && "; beside it the number's share of the uncertainty of the worst attitude, driving"}.
          </p>
          <Figure
            sentence={barsInWords(drawn)}
            picture={barsPicture(barPlot(drawn))}
            height={() => barsHeight(drawn.length)}
            name={`margin ${name}`}
            table={() => barsTable(bars)}
            tableTitle="Every number as a table"
            reading={{ label: "Numbers", describe: (key) => barLines(drawn, key) }}
          >
            {tied && <p class="quiet small">{tied}</p>}
          </Figure>
        </>
      )}
      {notes.map((note) => (
        <p key={note} class="quiet small">
          {note}
        </p>
      ))}
    </>
  );
}
