import { isDestroyed } from "../../../shared/decide/verdict/states.ts";
import { CrossingTable } from "../../ui/crossing/CrossingTable.tsx";
import { HowSure } from "../../ui/HowSure.tsx";
import { Warnings } from "../../ui/Warnings.tsx";
import { fitFigures, fitSentence } from "../fitup/fitWords.ts";
import { groupSums, headroomSentence, massFigures, massText } from "../mass/massWords.ts";
import { FoundTests } from "../match/nextTest/NextTest.tsx";
import { FallTable } from "../rundown/FallTable.tsx";
import { LimitTables } from "../rundown/limits/LimitTables.tsx";
import { alarmText, asIfText, endSentence, rundownSentence } from "../rundown/rundownWords.ts";
import type { Sheet } from "./useSheet.ts";

interface Props {
  readonly sheet: Sheet;
}

/** How long it holds, and the alarm to set. */
export function RunSection({ sheet: { run, verdict, busy } }: Props) {
  const state = verdict.verdict?.state ?? null;
  if (!run) return busy ? <p class="quiet small">Running the charge down…</p> : null;
  const said =
    state !== null && isDestroyed(state)
      ? [asIfText(state)]
      : [rundownSentence(run), alarmText(run), endSentence(run)];
  return (
    <section aria-label="Run-down">
      <h2>Run-down and alarm</h2>
      <p>{said.join(" ")}</p>
      <FallTable answered={run} state={state} />
    </section>
  );
}

/** What burns or bursts first, and how near everything else is. */
export function LimitsSection({ sheet: { limits } }: Props) {
  if (!limits) return null;
  return (
    <section aria-label="Limits">
      <h2>What burns or bursts first</h2>
      <p>{limits.first.sentence}</p>
      <LimitTables limits={limits} cautions={false} />
    </section>
  );
}

/** What it holds while its lip stands over a joint of the surface; nothing of a surface without any. */
export function CrossingSection({ sheet: { outcome, verdict } }: Props) {
  if (verdict.crossings.length === 0) return null;
  return (
    <section aria-label="Over the joints">
      <CrossingTable
        crossings={verdict.crossings}
        target={outcome.build.targetMargin}
        state={verdict.verdict?.state ?? null}
      />
    </section>
  );
}

/** What it weighs, and what it may weigh. */
export function MassSection({ sheet: { headroom } }: Props) {
  return (
    <section aria-label="Mass">
      <h2>Mass</h2>
      <p>{headroomSentence(headroom)}</p>
      <p class="small">
        {groupSums(headroom)
          .map(({ group, value }) => `${group} ${massText(value)}`)
          .join(", ")}
        ; <span class="quiet">{massFigures(headroom)}</span>.
      </p>
    </section>
  );
}

/** Whether the parts close in the housing; nothing of a build without a stack. */
export function FitSection({ sheet: { fits } }: Props) {
  if (fits.length === 0) return null;
  return (
    <section aria-label="Fit-up">
      <h2>Fit-up</h2>
      <p>{fitSentence(fits)}</p>
      <p class="quiet small">{fitFigures(fits)}</p>
    </section>
  );
}

/** The tests that would tell most. */
export function NextSection({ sheet: { outcome, sure, next, build } }: Props) {
  return <FoundTests outcome={outcome} sure={sure} id={build.id} found={next} />;
}

/** What is not known well enough, and what is odd. */
export function OpenSection({ sheet: { outcome, sure } }: Props) {
  return (
    <div class="sheet-open">
      <HowSure state={sure} ranges="ranges, and the bars in the pictures" />
      <Warnings outcome={outcome} />
    </div>
  );
}
