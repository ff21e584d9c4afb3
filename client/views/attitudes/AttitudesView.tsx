import { useMemo, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { isDestroyed, type VerdictState } from "../../../shared/decide/verdict/states.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { isChanged, isLacking, type Outcome } from "../../state/outcome.ts";
import { triedToQuery } from "../../state/partsTried.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { type UncertaintyState, useUncertainty } from "../../state/useUncertainty.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { CrossingTable } from "../../ui/crossing/CrossingTable.tsx";
import { HowSure } from "../../ui/HowSure.tsx";
import { Later } from "../../ui/Later.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { RestsOn } from "../../ui/RestsOn.tsx";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { VerdictBand } from "../../ui/verdict/VerdictBand.tsx";
import { Warnings } from "../../ui/Warnings.tsx";
import { AddAttitude } from "./AddAttitude.tsx";
import { AskAngle } from "./AskAngle.tsx";
import { AttitudeTable } from "./AttitudeTable.tsx";
import { figures } from "./attitudeWords.ts";
import { BesideTable } from "./BesideTable.tsx";
import { DrivePanel } from "./DrivePanel.tsx";
import { PowerCutCaution } from "./power/PowerCutCaution.tsx";
import { RoseChart } from "./RoseChart.tsx";
import { type Rose, roseOf } from "./rose.ts";
import { standAt } from "./stand.ts";

const partial = () => import("./partial/PartialAttitudes.tsx");

/** Where does it need most? Pull needed against pull made, from floor over wall to ceiling. */
export default function AttitudesView() {
  return (
    <BuildOnScreen>{(book, build) => <AttitudesOf key={build.id} book={book} build={build} />}</BuildOnScreen>
  );
}

interface OfBuild {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

function AttitudesOf({ book, build }: OfBuild) {
  const { tried, outcome } = useOutcomes(build);
  const sure = useUncertainty();
  const state = useVerdict().verdict?.state ?? null;
  const doubt = state !== null && isDestroyed(state) ? null : sure.doubt;
  const rose = useMemo(() => roseOf(outcome, doubt), [outcome, doubt]);
  if (isLacking(outcome))
    return (
      <div class="page attitudes">
        <Later load={partial} what="What is known" props={{ book, outcome, id: build.id, tried }} />
      </div>
    );
  return (
    <div class="page attitudes">
      <div class="page-head">
        <VerdictBand book={book} outcome={outcome} />
        {rose && <p class="attitudes-answer">{figures(rose)}</p>}
        {isChanged(tried) && (
          <p class="small">
            With what is <a href={href("match", build.id, triedToQuery(tried))}>tried in Match</a>, not as the
            build is stored.
          </p>
        )}
      </div>
      {rose ? (
        <Answered book={book} build={build} outcome={outcome} rose={rose} sure={sure} state={state} />
      ) : (
        <section class="page-below" aria-label="What is missing">
          <Missing outcome={outcome} build={build.id} />
        </section>
      )}
    </div>
  );
}

interface AnsweredProps extends OfBuild {
  readonly outcome: Outcome;
  readonly rose: Rose;
  readonly sure: UncertaintyState;
  /** of the build's verdict */
  readonly state: VerdictState | null;
}

function Answered({ book, build, outcome, rose, sure, state }: AnsweredProps) {
  const [angle, setAngle] = useState<number | null>(null);
  const { crossings } = useVerdict();
  const shown = angle ?? Math.round(rose.worst.driving.angle);
  const asked = angle === null ? null : standAt(rose.input.vehicle, rose.pull, angle);
  return (
    <>
      <section class="page-main" aria-label="The picture">
        <RoseChart rose={rose} asked={asked} onAsk={setAngle} />
        <AskAngle rose={rose} angle={shown} onAngle={setAngle} />
        <div class="attitudes-own">
          <AddAttitude build={build} />
          <DrivePanel climber={{ vehicle: rose.input.vehicle, made: rose.made }} />
        </div>
      </section>
      <section class="attitudes-table" aria-label="What it means">
        <h2>
          Needed against made
          <VerdictMarks book={book} outcome={outcome} />
        </h2>
        <AttitudeTable rose={rose} build={build} state={state} waits={sure.doubt === null && sure.busy} />
        <CrossingTable crossings={crossings} target={build.data.targetMargin} state={state} />
        <BesideTable book={book} build={build} />
      </section>
      <div class="page-below page-columns">
        <HowSure state={sure} />
        <div>
          <RestsOn book={book} outcome={outcome} />
          <Warnings outcome={outcome} />
        </div>
      </div>
      <div class="page-below">
        <PowerCutCaution book={book} outcome={outcome} />
        <Cautions />
      </div>
    </>
  );
}

function Cautions() {
  return (
    <>
      <Caution>
        A vehicle on a wall or ceiling falls when the charge ends: tether it, keep people, pets and traffic
        from under it, never above passers-by.
      </Caution>
      <Caution>Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane.</Caution>
    </>
  );
}
