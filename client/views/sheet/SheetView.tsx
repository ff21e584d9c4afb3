import { useEffect, useRef, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { drawForPaper } from "../../charts/Still.tsx";
import { isDemo } from "../../state/book.ts";
import { changes } from "../../state/build.ts";
import { isChanged, isLacking } from "../../state/outcome.ts";
import { triedToQuery } from "../../state/partsTried.ts";
import { version } from "../../state/version.ts";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { moment } from "../../ui/moment.ts";
import { Problem } from "../../ui/Problem.tsx";
import { VerdictBand } from "../../ui/verdict/VerdictBand.tsx";
import { AttitudeStrip } from "../match/strip/AttitudeStrip.tsx";
import { CAUTIONS, GROUPS } from "../rundown/limits/limitWords.ts";
import { MatchStill, RoseStill } from "./charts.tsx";
import {
  CrossingSection,
  FitSection,
  LimitsSection,
  MassSection,
  NextSection,
  OpenSection,
  RunSection,
} from "./findings.tsx";
import { fitPaper } from "./fitPaper.ts";
import { PartsSection, TestsSection } from "./made.tsx";
import { SaveSheet } from "./SaveSheet.tsx";
import { type Sheet, useSheet } from "./useSheet.ts";

/** What was decided, and on what grounds? A page or two of a build, to be printed and kept. */
export default function SheetView() {
  return (
    <BuildOnScreen>{(book, build) => <SheetOf key={build.id} book={book} build={build} />}</BuildOnScreen>
  );
}

function SheetOf({ book, build }: { readonly book: Book; readonly build: StoredOf<"builds"> }) {
  const sheet = useSheet(book, build);
  const paper = useRef<HTMLElement>(null);
  const [wasSettled, setSettled] = useState(false);
  useEffect(() => {
    if (sheet.settled) setSettled(true);
  }, [sheet.settled]);
  useEffect(() => {
    const fit = () => {
      if (paper.current) fitPaper(paper.current);
      // Measuring leaves the pictures as on the screen.
      drawForPaper();
    };
    addEventListener("beforeprint", fit);
    return () => removeEventListener("beforeprint", fit);
  }, []);
  return (
    <div class="sheet-view" aria-busy={sheet.busy}>
      <SaveSheet sheet={sheet} />
      {sheet.problems.map((problem) => (
        <Problem key={problem} message={problem} />
      ))}
      <article
        ref={paper}
        class={wasSettled ? "sheet" : "sheet sheet-unsettled"}
        aria-label={`Sheet of ${sheet.outcome.build.name}`}
      >
        <First sheet={sheet} />
        {!isLacking(sheet.outcome) && <Second sheet={sheet} />}
      </article>
    </div>
  );
}

/** Whose sheet it is, of which day, by which version. */
function Head({ sheet: { build, outcome } }: { readonly sheet: Sheet }) {
  const tried = changes.value;
  return (
    <header class="sheet-head">
      <p class="sheet-name">{outcome.build.name}</p>
      <p class="quiet small">
        <time dateTime={new Date().toISOString()}>{moment(new Date().toISOString())}</time>, Gripcurve{" "}
        {version}
        {isDemo.value && "; demo numbers, invented"}
      </p>
      {isChanged(tried) && (
        <p class="small">
          <strong>Not as the build is stored:</strong> with what is{" "}
          <a href={href("match", build.id, triedToQuery(tried))}>tried in Match</a>.
        </p>
      )}
      {outcome.build.note && <p class="small">{outcome.build.note}</p>}
    </header>
  );
}

/** What it comes to, why, and what it is made of. */
function First({ sheet }: { readonly sheet: Sheet }) {
  const { book, build, outcome, sure, verdict } = sheet;
  return (
    <div class="sheet-page">
      <Head sheet={sheet} />
      <VerdictBand book={book} outcome={outcome} />
      {isLacking(outcome) ? (
        <Missing outcome={outcome} build={build.id} />
      ) : (
        <AttitudeStrip outcome={outcome} sure={sure} state={verdict.verdict?.state ?? null} />
      )}
      <MatchStill sheet={sheet} />
      <div class="sheet-columns">
        <PartsSection book={book} outcome={outcome} />
        <div>
          <TestsSection book={book} outcome={outcome} />
          <MassSection sheet={sheet} />
          <FitSection sheet={sheet} />
        </div>
      </div>
    </div>
  );
}

/** What it will do and must not, what is open, and what can hurt. */
function Second({ sheet }: { readonly sheet: Sheet }) {
  return (
    <div class="sheet-page">
      <div class="sheet-columns">
        <div>
          <RoseStill sheet={sheet} />
          <NextSection sheet={sheet} />
        </div>
        <div>
          <RunSection sheet={sheet} />
          <LimitsSection sheet={sheet} />
        </div>
      </div>
      <CrossingSection sheet={sheet} />
      <OpenSection sheet={sheet} />
      <section class="sheet-cautions" aria-label="Cautions">
        {GROUPS.map(({ caution }) => (
          <Caution key={caution}>{CAUTIONS[caution]}</Caution>
        ))}
        <Caution>
          The figures are estimates from the maker's own tests, no certification. Rules of the place, of its
          owner and of the makers of cells and motors come first; for work over people or at height, ask a
          qualified person.
        </Caution>
      </section>
    </div>
  );
}
