import type { Book } from "../../../shared/book/resolve.ts";
import type { Spread } from "../../../shared/decide/uncertainty.ts";
import { worstName } from "../../../shared/decide/verdict/attitudeWords.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { isDestroyed, type VerdictState } from "../../../shared/decide/verdict/states.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { type AttitudeRow, attitudeRows, type Outcome } from "../../state/outcome.ts";
import type { UncertaintyState } from "../../state/useUncertainty.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { Caution } from "../../ui/Caution.tsx";
import { HowSure } from "../../ui/HowSure.tsx";
import { RestsOn } from "../../ui/RestsOn.tsx";
import { Sure } from "../../ui/Sure.tsx";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { governsInWords, gradeOf } from "../../ui/verdictWords.ts";
import { Warnings } from "../../ui/Warnings.tsx";
import { LimitsLine } from "./LimitsLine.tsx";
import { NextPanel, WaysPanel } from "./panels.tsx";
import { WorkingOut } from "./WorkingOut.tsx";

function drivingText({ driving, drivingModes }: Pick<AttitudeRow, "driving" | "drivingModes">): string {
  return driving === null
    ? "driving needs none"
    : `driving ${marginText(driving)}, ${governsInWords(drivingModes)}`;
}

interface RowProps extends Pick<AttitudeRow, "parked" | "driving" | "parkedModes" | "drivingModes"> {
  readonly title: string;
  readonly target: number;
  /** of the build's verdict */
  readonly state: VerdictState | null;
  /** of the parked margin; null where it isn't known */
  readonly spread: Spread | null;
}

function Row({ title, target, state, spread, parked, parkedModes, driving, drivingModes }: RowProps) {
  const { grade, word } = gradeOf(parked, target, state);
  return (
    <tr>
      <th scope="row">
        {title}
        <small>
          {parkedModes.length > 0 && `${governsInWords(parkedModes)} governs; `}
          {drivingText({ driving, drivingModes })}
        </small>
      </th>
      <td class={grade}>
        <span class="margin">{marginText(parked)}</span>
        <small>{word}</small>
        <Sure spread={spread} />
      </td>
    </tr>
  );
}

export interface VerdictProps {
  readonly book: Book;
  /** of the stored build */
  readonly id: string;
  readonly outcome: Outcome;
  readonly sure: UncertaintyState;
}

/** What the picture means: margins by attitude, what they rest on, warnings, cautions. */
export function Verdict({ book, id, outcome, sure }: VerdictProps) {
  const { prediction, build } = outcome;
  if (!prediction) return null;
  const { parked, driving } = prediction.worst;
  const state = useVerdict().verdict?.state ?? null;
  const known = state !== null && isDestroyed(state) ? null : sure;
  const spreadAt = (angle: number) =>
    known?.doubt?.attitudes.find((each) => each.angle === angle)?.parked ?? null;
  return (
    <section class="match-verdict" aria-label="What it means">
      <h2>
        Margins
        <VerdictMarks book={book} outcome={outcome} />
      </h2>
      <table class="holds">
        <tbody>
          {attitudeRows(outcome).map((row) => (
            <Row
              key={row.angle}
              {...row}
              title={`${row.title} ${row.angle.toFixed(0)}°`}
              target={build.targetMargin}
              state={state}
              spread={spreadAt(row.angle)}
            />
          ))}
          <Row
            title={`Worst, ${parked.angle.toFixed(0)}°`}
            target={build.targetMargin}
            state={state}
            spread={known?.worst?.parked.parked ?? null}
            parked={parked.margin}
            parkedModes={parked.governs}
            driving={driving.margin}
            drivingModes={driving.governs}
          />
        </tbody>
      </table>
      <p class="quiet small">
        Parked, and driving nose uphill; driving is hardest at {driving.angle.toFixed(0)}° (
        {worstName(driving.angle)}). Wanted: {formatFixed(build.targetMargin, 2)} ×.
      </p>
      <LimitsLine book={book} outcome={outcome} />
      <div class="match-more">
        <WorkingOut outcome={outcome} />
        <WaysPanel book={book} outcome={outcome} />
        <HowSure
          state={sure}
          ranges={`Ranges, and the ${outcome.resolved?.propeller ? "bar" : "bars"} across the operating point`}
        />
        <NextPanel book={book} outcome={outcome} sure={sure} id={id} />
        <RestsOn book={book} outcome={outcome} />
        <Warnings outcome={outcome} />
        <Caution>
          A vehicle on a wall or ceiling falls when the charge ends: tether it, keep people, pets and traffic
          from under it.
        </Caution>
        <Caution>Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane.</Caution>
      </div>
    </section>
  );
}
