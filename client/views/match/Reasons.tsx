import type { Book } from "../../../shared/book/resolve.ts";
import { worstName } from "../../../shared/decide/verdict/attitudeWords.ts";
import type { Outcome } from "../../state/outcome.ts";
import type { UncertaintyState } from "../../state/useUncertainty.ts";
import { Caution } from "../../ui/Caution.tsx";
import { HowSure } from "../../ui/HowSure.tsx";
import { RestsOn } from "../../ui/RestsOn.tsx";
import { Warnings } from "../../ui/Warnings.tsx";
import { ShowWorking } from "../../ui/working/ShowWorking.tsx";
import { boardLater } from "../../ui/working/WorkedFigure.tsx";
import { LimitsLine } from "./LimitsLine.tsx";
import { MovesPanel, NextPanel, WaysPanel } from "./panels.tsx";

export interface ReasonsProps {
  readonly book: Book;
  /** of the stored build */
  readonly id: string;
  readonly outcome: Outcome;
  readonly sure: UncertaintyState;
}

/** Under the picture, in two columns: what can be done and what moves it, how sure it is and what to test next. */
export function Reasons({ book, id, outcome, sure }: ReasonsProps) {
  const bars = outcome.resolved?.propeller ? "bar" : "bars";
  // While one thread samples, the other may begin with these.
  const rested = sure.asked !== null || !sure.busy;
  return (
    <>
      <div class="page-below page-columns match-reasons">
        <div>
          <WaysPanel book={book} outcome={outcome} rested={rested} />
          <MovesPanel outcome={outcome} shares={sure.doubt?.shares ?? null} rested={rested} />
        </div>
        <div>
          <HowSure state={sure} ranges={`ranges, and the ${bars} across the operating point`} />
          <NextPanel book={book} outcome={outcome} sure={sure} id={id} rested={rested} />
        </div>
      </div>
      <div class="page-below match-cautions">
        <Caution>
          A vehicle on a wall or ceiling falls when the charge ends: tether it, keep people, pets and traffic
          from under it. Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane.
        </Caution>
      </div>
    </>
  );
}

/** Beside the settings, under the picture: what it is based on, what to watch out for, and its working. */
export function BasedOn({ book, outcome }: Pick<ReasonsProps, "book" | "outcome">) {
  return (
    <div class="page-columns match-basis">
      <div>
        <RestsOn book={book} outcome={outcome} />
      </div>
      <div>
        <Warnings outcome={outcome} />
        <LimitsLine book={book} outcome={outcome} />
        <Hardest outcome={outcome} />
        {outcome.prediction?.point && <ShowWorking of={() => boardLater(book, outcome)} />}
      </div>
    </div>
  );
}

function Hardest({ outcome: { prediction } }: { outcome: Outcome }) {
  if (!prediction) return null;
  const { angle } = prediction.worst.driving;
  return (
    <p class="quiet small">
      Margins parked, and driving nose uphill; driving is hardest at {angle.toFixed(0)}° ({worstName(angle)}).
    </p>
  );
}
