import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { HandleKey } from "../../state/handles.ts";
import { isLacking, settingsOf, solve } from "../../state/outcome.ts";
import { withParts } from "../../state/partsTried.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { useResting } from "../../state/useSettled.ts";
import { useUncertainty } from "../../state/useUncertainty.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { CrossingStrip } from "../../ui/crossing/CrossingStrip.tsx";
import { Resting } from "../../ui/Resting.tsx";
import { effectWords } from "../../ui/verdict/effectWords.ts";
import { VerdictBand } from "../../ui/verdict/VerdictBand.tsx";
import { HandlePanel } from "./HandlePanel.tsx";
import { Hints } from "./Hints.tsx";
import { MatchPicture } from "./MatchPicture.tsx";
import { PartialPanel } from "./panels.tsx";
import { Reasons } from "./Reasons.tsx";
import { AttitudeStrip } from "./strip/AttitudeStrip.tsx";

/** Does it hold? Fan against leak, and what the crossing means. */
export default function MatchView() {
  return (
    <BuildOnScreen>{(book, build) => <MatchOf key={build.id} book={book} build={build} />}</BuildOnScreen>
  );
}

/** Handles of which a build knows no value. */
const NONE: readonly HandleKey[] = [];
const FRICTION: readonly HandleKey[] = ["wheelFriction"];

function MatchOf({ book, build }: { book: Book; build: StoredOf<"builds"> }) {
  const { tried, asStored, outcome } = useOutcomes(build);
  const sure = useUncertainty();
  const { verdict, crossings } = useVerdict();
  const resolved = useResting(outcome.resolved);
  const { parts } = tried;
  const { unmoved, settings } = useMemo(() => {
    const unmoved = withParts(book, build.data, { parts });
    const { resolved } = parts ? solve(book, unmoved) : asStored;
    return { unmoved, settings: settingsOf(book, unmoved, resolved) };
  }, [book, build, asStored, parts]);
  const lacking = isLacking(outcome);
  return (
    <div class="page match">
      {lacking ? (
        <PartialPanel book={book} outcome={outcome} id={build.id} />
      ) : (
        <div class="page-head">
          <VerdictBand book={book} outcome={outcome} />
          <AttitudeStrip outcome={outcome} sure={sure} state={verdict?.state ?? null} />
          <CrossingStrip
            crossings={crossings}
            target={build.data.targetMargin}
            state={verdict?.state ?? null}
          />
          <Hints />
        </div>
      )}
      <HandlePanel
        book={book}
        stored={build.data}
        build={unmoved}
        resolved={resolved}
        settings={settings}
        unset={asStored.resolved?.friction === null ? FRICTION : NONE}
        effect={verdict && effectWords(verdict)}
      />
      {!lacking && <MatchPicture book={book} build={build} {...{ asStored, outcome, sure }} />}
      {outcome.prediction && <Resting panel={Reasons} props={{ book, id: build.id, outcome, sure }} />}
    </div>
  );
}
