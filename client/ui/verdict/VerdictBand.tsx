import type { ComponentChildren } from "preact";
import type { Book } from "../../../shared/book/resolve.ts";
import { toneOf } from "../../../shared/decide/verdict/states.ts";
import type { Verdict } from "../../../shared/decide/verdict/verdict.ts";
import { wayOutText } from "../../../shared/decide/verdict/wayOutWords.ts";
import { detailOf, sentenceOf, stateWords } from "../../../shared/decide/verdict/words.ts";
import type { Outcome } from "../../state/outcome.ts";
import { type UncertaintyState, useUncertainty } from "../../state/useUncertainty.ts";
import { type ShownVerdict, useVerdict } from "../../state/verdict/useVerdict.ts";
import { Answer } from "../Answer.tsx";
import { VerdictMarks } from "../VerdictMarks.tsx";
import { ChanceFigure, RangeFigure } from "../working/SampledFigure.tsx";
import { MarginFigure } from "../working/WorkedFigure.tsx";
import { type BandFigure, bandFigures } from "./bandFigures.ts";
import { StateMark } from "./StateMark.tsx";

/** What to do about it; its place is kept while that is looked for. */
function wayText(verdict: Verdict, { ways, problem }: ShownVerdict): string {
  if (problem) return problem;
  if (ways) return wayOutText(verdict, ways);
  return verdict.state === "holds" ? "" : "Looking for the way out…";
}

interface Props {
  readonly book: Book;
  /** of the build on the screen */
  readonly outcome: Outcome;
}

/** A figure with its working; one of the limits has it where they stand. */
function Value({ figure: { value, margin, sampled } }: { figure: BandFigure }) {
  if (margin)
    return (
      <MarginFigure
        angle={margin.angle}
        state={margin.driving ? "driving" : "parked"}
        margin={margin.margin}
        over={margin.over?.name}
      />
    );
  return sampled ? <ChanceFigure {...sampled} /> : <span>{value}</span>;
}

function Figures({ verdict, target, sure }: { verdict: Verdict; target: number; sure: UncertaintyState }) {
  return (
    <dl class="verdict-figures">
      {bandFigures(verdict, target, sure).map((figure) => (
        <div key={figure.of}>
          <dt>{figure.of}</dt>
          <dd>
            <strong>
              <Value figure={figure} />
            </strong>
            {figure.also && (
              <small>
                {figure.margin && figure.sampled && (
                  <>
                    <RangeFigure {...figure.sampled} />,{" "}
                  </>
                )}
                {figure.also}
              </small>
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** The answer of every view of a build: what it comes to, why, by which figure, and what to do about it. */
export function VerdictBand({ book, outcome }: Props) {
  const shown = useVerdict();
  const sure = useUncertainty();
  const { verdict, problem } = shown;
  if (!verdict)
    return (
      <Answer sentence={`${outcome.build.name} can't be answered for yet.`}>
        {outcome.prediction ? problem : "This is missing:"}
      </Answer>
    );
  return (
    <Band
      verdict={verdict}
      way={wayText(verdict, shown)}
      target={outcome.build.targetMargin}
      sure={sure}
      marks={<VerdictMarks book={book} outcome={outcome} />}
    />
  );
}

interface BandProps {
  readonly verdict: Verdict;
  /** what to do about it; empty where nothing is to be done */
  readonly way: string;
  /** margin that is wanted [-] */
  readonly target: number;
  readonly sure: UncertaintyState;
  readonly marks?: ComponentChildren;
}

/** A verdict, drawn. */
export function Band({ verdict, way, target, sure, marks }: BandProps) {
  return (
    <section class={`verdict-band ${toneOf(verdict.state)}-band`} aria-label="Verdict">
      <StateMark state={verdict.state} words={stateWords(verdict)} />
      <div class="verdict-words">
        <h1>{sentenceOf(verdict)}</h1>
        {way && <p class="verdict-way">{way}</p>}
        <p class="verdict-detail">
          {detailOf(verdict)}
          {marks}
        </p>
      </div>
      <Figures verdict={verdict} target={target} sure={sure} />
    </section>
  );
}
