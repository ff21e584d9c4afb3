import { useMemo, useRef } from "preact/hooks";
import { solvable } from "../../../../shared/book/resolve.ts";
import { Chart } from "../../../charts/Chart.tsx";
import type { Outcome } from "../../../state/outcome.ts";
import { useWorker } from "../../../state/useWorker.ts";
import { DataTable } from "../../../ui/DataTable.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { SaveChart } from "../../../ui/SaveChart.tsx";
import { wanted, wantedOf, wantedWords } from "../ways/wanted.ts";
import type { Question, Reply } from "./answer.ts";
import {
  type Bar,
  barsInWords,
  barsOf,
  barsSentence,
  barsTable,
  drawnBars,
  type Shares,
  tiedText,
} from "./bars.ts";
import { barsHeight, drawBars } from "./draw.ts";
import { withNames } from "./names.ts";

const FAILED: Reply = {
  problem: "The sensitivities could not be worked out in this browser; reload the page.",
};
const startWorker = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

export interface SensitivitiesProps {
  readonly outcome: Outcome;
  /** each input's share of the variance of the worst driving margin; null where it is not known */
  readonly shares: Shares | null;
}

/** How much each number of the build moves the margin, and how much of the doubt is its own. */
export default function Sensitivities({ outcome, shares }: SensitivitiesProps) {
  const chosen = wantedOf(outcome, wanted.value);
  const question = useMemo((): Question | null => {
    const build = outcome.resolved && solvable(outcome.resolved);
    return build && { build, wanted: chosen };
  }, [outcome, chosen.attitude, chosen.mode]);
  const { reply, asked, busy } = useWorker<Question, Reply>(startWorker, question, FAILED);
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
  const svg = useRef<SVGSVGElement | null>(null);
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
            {known && "; beside it the number's share of the doubt about the worst attitude, driving"}.
          </p>
          <Chart
            sentence={barsInWords(drawn)}
            height={() => barsHeight(drawn.length)}
            svgRef={svg}
            draw={(element, size) => drawBars(element, drawn, size)}
          />
          {tied && <p class="quiet small">{tied}</p>}
          <div class="chart-foot">
            <SaveChart
              name={`margin ${name}`.toLowerCase().replace(/[^a-z0-9]+/g, "-")}
              svg={() => svg.current}
              table={() => barsTable(bars)}
            />
            <DataTable title="Every number as a table" table={() => barsTable(bars)} />
          </div>
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
