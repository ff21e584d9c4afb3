import type { AttitudeUncertainty } from "../../../../shared/decide/uncertainty.ts";
import { isDestroyed, type VerdictState } from "../../../../shared/decide/verdict/states.ts";
import type { Outcome } from "../../../state/outcome.ts";
import type { UncertaintyState } from "../../../state/useUncertainty.ts";
import { firstInWords, gradeOf } from "../../../ui/verdictWords.ts";
import { ChanceFigure, RangeFigure } from "../../../ui/working/SampledFigure.tsx";
import { MarginFigure } from "../../../ui/working/WorkedFigure.tsx";
import { MarginBar } from "./MarginBar.tsx";
import { type StripAttitude, stripOf } from "./stripOf.ts";

export interface AttitudeStripProps {
  readonly outcome: Outcome;
  readonly sure: UncertaintyState;
  /** of the build's verdict */
  readonly state: VerdictState | null;
}

/** Every attitude that must hold in one row: its margin, what gives first, how likely it holds. */
export function AttitudeStrip({ outcome, sure, state }: AttitudeStripProps) {
  const known = state !== null && isDestroyed(state) ? null : sure;
  return (
    <ol class="attitude-strip" aria-label="Margins by attitude">
      {stripOf(outcome).map((attitude) => (
        <Cell
          key={attitude.key}
          attitude={attitude}
          target={outcome.build.targetMargin}
          state={state}
          sampled={sampledAt(attitude, known)}
          waits={known !== null && known.doubt === null && known.busy}
        />
      ))}
    </ol>
  );
}

function sampledAt(
  { angle, worst }: StripAttitude,
  sure: UncertaintyState | null,
): AttitudeUncertainty | null {
  const found = sure?.doubt?.attitudes.find((each) => each.angle === angle);
  return found ?? (worst ? (sure?.worst?.parked ?? null) : null);
}

interface CellProps {
  readonly attitude: StripAttitude;
  readonly target: number;
  readonly state: VerdictState | null;
  readonly sampled: AttitudeUncertainty | null;
  /** the chance is still sampled; its line has its place */
  readonly waits: boolean;
}

function Cell({ attitude, target, state, sampled, waits }: CellProps) {
  const { title, angle, parked, worst } = attitude;
  const { grade, word } = gradeOf(parked, target, state);
  return (
    <li class={worst ? "attitude-tightest" : undefined}>
      <span class="attitude-name">
        {title} {angle.toFixed(0)}°{worst && " · tightest"}
      </span>
      <span class={`attitude-margin ${grade}`}>
        <span class="margin">
          <MarginFigure angle={angle} state="parked" margin={parked} />
        </span>{" "}
        <small>{word}</small>
      </span>
      <MarginBar margin={parked} target={target} spread={sampled?.parked ?? null} grade={grade} />
      <small>
        {parked === null ? "no pull needed" : `${firstInWords(attitude.parkedModes)} first`}
        {sampled ? (
          <>
            {" "}
            · <Chance sampled={sampled} />
          </>
        ) : (
          waits && " · …"
        )}
      </small>
      <Driving attitude={attitude} />
    </li>
  );
}

function Driving({ attitude: { angle, driving, drivingModes } }: { readonly attitude: StripAttitude }) {
  if (driving === null) return <small>driving needs no pull</small>;
  return (
    <small>
      driving <MarginFigure angle={angle} state="driving" margin={driving} />, {firstInWords(drivingModes)}{" "}
      first
    </small>
  );
}

function Chance({ sampled: { angle, parked } }: { readonly sampled: AttitudeUncertainty }) {
  const isRange = parked.p5 !== null && parked.p95 !== null;
  return (
    <>
      <ChanceFigure angle={angle} state="parked" spread={parked} /> chance{isRange && ", "}
      <RangeFigure angle={angle} state="parked" spread={parked} />
    </>
  );
}
