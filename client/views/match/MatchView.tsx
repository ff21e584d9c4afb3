import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Verdict as Found } from "../../../shared/decide/verdict/verdict.ts";
import { figureOf, stateWords } from "../../../shared/decide/verdict/words.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { motionMs } from "../../charts/motion.ts";
import { overlayIds, settled } from "../../state/build.ts";
import { isChanged, isLacking, settingsOf, solve } from "../../state/outcome.ts";
import { withParts } from "../../state/partsTried.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { useUncertainty } from "../../state/useUncertainty.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { CrossingStrip } from "../../ui/crossing/CrossingStrip.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { VerdictBand } from "../../ui/verdict/VerdictBand.tsx";
import { letterAt } from "../compare/compareWords.ts";
import { HandlePanel } from "./HandlePanel.tsx";
import { Hints } from "./Hints.tsx";
import { fanLabel, leakLabel, pictureSentence } from "./labels.ts";
import { MatchChart } from "./MatchChart.tsx";
import { MOST_OVERLAYS, OverlayPicker } from "./OverlayPicker.tsx";
import { OverlayTable } from "./OverlayTable.tsx";
import { OVERLAY_DASHES, type Overlay } from "./overlays.ts";
import { PartialPanel } from "./panels.tsx";
import { pictureOf } from "./picture.ts";
import { BasedOn, Reasons } from "./Reasons.tsx";
import { AttitudeStrip } from "./strip/AttitudeStrip.tsx";
import { ThrustSection } from "./thrust/ThrustSection.tsx";

/** Does it hold? Fan against leak, and what the crossing means. */
export default function MatchView() {
  return (
    <BuildOnScreen>{(book, build) => <MatchOf key={build.id} book={book} build={build} />}</BuildOnScreen>
  );
}

function useOverlays(book: Book, shown: string, ids: readonly string[]): Overlay[] {
  return useMemo(() => {
    const builds = ids.flatMap((id) => book.builds.find((build) => build.id === id && id !== shown) ?? []);
    return builds.slice(0, MOST_OVERLAYS).flatMap((build, i) => {
      const picture = pictureOf(book, solve(book, build.data));
      const letter = letterAt(i);
      return picture
        ? [{ id: build.id, name: build.data.name, letter, dash: OVERLAY_DASHES[i], picture }]
        : [];
    });
  }, [book, shown, ids]);
}

function MatchOf({ book, build }: { book: Book; build: StoredOf<"builds"> }) {
  const { tried, asStored, outcome } = useOutcomes(build);
  const sure = useUncertainty();
  const { verdict, crossings } = useVerdict();
  const overlays = useOverlays(book, build.id, overlayIds.value);
  const { parts } = tried;
  const { unmoved, settings } = useMemo(() => {
    const unmoved = withParts(book, build.data, { parts });
    const { resolved } = parts ? solve(book, unmoved) : asStored;
    return { unmoved, settings: settingsOf(book, unmoved, resolved) };
  }, [book, build, asStored, parts]);
  const ghost = useMemo(() => pictureOf(book, asStored), [book, asStored]);
  const picture = useMemo(
    () => (outcome === asStored ? ghost : pictureOf(book, outcome)),
    [book, outcome, ghost],
  );
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
        resolved={outcome.resolved}
        settings={settings}
        unset={asStored.resolved?.friction === null ? ["wheelFriction"] : []}
        effect={effectOf(verdict)}
      />
      {!lacking && (
        <section class="page-main match-picture" aria-label="The picture">
          {outcome.prediction && outcome.resolved?.propeller ? (
            <ThrustSection
              book={book}
              id={build.id}
              asStored={asStored}
              outcome={outcome}
              spread={sure.doubt?.suction ?? null}
            />
          ) : picture ? (
            <MatchChart
              drawing={{
                picture,
                ghost: isChanged(tried) ? ghost : null,
                overlays,
                fan: fanLabel(book, outcome),
                leak: leakLabel(outcome),
                duration: motionMs(settled.value),
                spread: sure.doubt?.point ?? null,
              }}
              sentence={pictureSentence(outcome)}
              fileName={`match ${build.data.name}`.toLowerCase().replace(/[^a-z0-9]+/g, "-")}
            />
          ) : (
            <Missing outcome={outcome} build={build.id} />
          )}
          <OverlayPicker book={book} shown={build.id} />
          {picture && <OverlayTable book={book} overlays={overlays} />}
          {outcome.prediction && <BasedOn book={book} outcome={outcome} />}
        </section>
      )}
      {outcome.prediction && <Reasons book={book} id={build.id} outcome={outcome} sure={sure} />}
    </div>
  );
}

/** What a setting comes to while it is moved, in a few words: "tight, 1.31 × the pull needed on the overhang". */
function effectOf(verdict: Found | null): string | null {
  const figure = verdict && figureOf(verdict);
  return verdict && [stateWords(verdict), ...(figure ? [`${figure.value} ${figure.of}`] : [])].join(", ");
}
