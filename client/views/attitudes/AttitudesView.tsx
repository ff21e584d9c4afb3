import { useMemo, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { changesToQuery } from "../../state/handles.ts";
import { isChanged, isLacking, type Outcome } from "../../state/outcome.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { type UncertaintyState, useUncertainty } from "../../state/useUncertainty.ts";
import { Answer } from "../../ui/Answer.tsx";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { HowSure } from "../../ui/HowSure.tsx";
import { Later } from "../../ui/Later.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { RestsOn } from "../../ui/RestsOn.tsx";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { Warnings } from "../../ui/Warnings.tsx";
import { AddAttitude } from "./AddAttitude.tsx";
import { AskAngle } from "./AskAngle.tsx";
import { AttitudeTable } from "./AttitudeTable.tsx";
import { figures, needSentence } from "./attitudeWords.ts";
import { BesideTable } from "./BesideTable.tsx";
import { DrivePanel } from "./DrivePanel.tsx";
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
  const { tried, outcome } = useOutcomes(book, build);
  const sure = useUncertainty(book, outcome);
  const rose = useMemo(() => roseOf(outcome, sure.doubt), [outcome, sure.doubt]);
  if (isLacking(outcome))
    return (
      <div class="page attitudes">
        <Later load={partial} what="What is known" props={{ book, outcome, id: build.id, tried }} />
      </div>
    );
  return (
    <div class="page attitudes">
      <div class="page-head" aria-live="polite">
        {rose ? (
          <Answer sentence={needSentence(rose)}>
            {figures(rose)}
            <VerdictMarks book={book} outcome={outcome} />
          </Answer>
        ) : (
          <Answer sentence={`${build.data.name} can't be answered for yet.`}>This is missing:</Answer>
        )}
        {isChanged(tried) && (
          <p class="small">
            With what is <a href={href("match", build.id, changesToQuery(tried))}>tried in Match</a>, not as
            the build is stored.
          </p>
        )}
      </div>
      {rose ? (
        <Answered book={book} build={build} outcome={outcome} rose={rose} sure={sure} />
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
}

function Answered({ book, build, outcome, rose, sure }: AnsweredProps) {
  const [angle, setAngle] = useState<number | null>(null);
  const shown = angle ?? Math.round(rose.worst.driving.angle);
  const asked = angle === null ? null : standAt(rose.input.vehicle, rose.pull, angle);
  return (
    <>
      <section class="page-main" aria-label="The picture">
        <RoseChart rose={rose} asked={asked} />
      </section>
      <section class="attitudes-table" aria-label="What it means">
        <h2>
          Needed against made
          <VerdictMarks book={book} outcome={outcome} />
        </h2>
        <AttitudeTable rose={rose} build={build} waits={sure.doubt === null && sure.busy} />
        <AskAngle rose={rose} angle={shown} onAngle={setAngle} />
        <BesideTable book={book} build={build} />
      </section>
      <div class="page-below page-columns">
        <div>
          <AddAttitude build={build} />
          <DrivePanel climber={{ vehicle: rose.input.vehicle, made: rose.made }} />
        </div>
        <HowSure state={sure} />
        <div>
          <RestsOn book={book} outcome={outcome} />
          <Warnings outcome={outcome} />
        </div>
      </div>
      <div class="page-below">
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
