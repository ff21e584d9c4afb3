import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { STANDARD_GRAVITY } from "../../../shared/physics/constants.ts";
import { formatFixed, formatQuantity } from "../../../shared/units/format.ts";
import { motionMs } from "../../charts/motion.ts";
import { overlayIds, settled } from "../../state/build.ts";
import {
  cavityPoint,
  isChanged,
  isLacking,
  type Outcome,
  propellerPoint,
  settingsOf,
  solve,
} from "../../state/outcome.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { type UncertaintyState, useUncertainty } from "../../state/useUncertainty.ts";
import { Answer } from "../../ui/Answer.tsx";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { sureText } from "../../ui/uncertaintyWords.ts";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { governsInWords } from "../../ui/verdictWords.ts";
import { findingOf } from "./finding.ts";
import { HandlePanel } from "./HandlePanel.tsx";
import { fanLabel, leakLabel, pictureSentence } from "./labels.ts";
import { OVERLAY_DASHES, type Overlay } from "./layers/overlays.ts";
import { MatchChart } from "./MatchChart.tsx";
import { MOST_OVERLAYS, OverlayPicker } from "./OverlayPicker.tsx";
import { OverlayTable } from "./OverlayTable.tsx";
import { MovesPanel, PartialPanel } from "./panels.tsx";
import { pictureOf } from "./picture.ts";
import { answerSentence } from "./sentence.ts";
import { ThrustSection } from "./thrust/ThrustSection.tsx";
import { rpmText } from "./thrust/thrustWords.ts";
import { Verdict } from "./Verdict.tsx";

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
      const letter = String.fromCharCode("A".charCodeAt(0) + i);
      return picture
        ? [{ id: build.id, name: build.data.name, letter, dash: OVERLAY_DASHES[i], picture }]
        : [];
    });
  }, [book, shown, ids]);
}

function MatchOf({ book, build }: { book: Book; build: StoredOf<"builds"> }) {
  const { tried, asStored, outcome } = useOutcomes(book, build);
  const sure = useUncertainty(book, outcome);
  const overlays = useOverlays(book, build.id, overlayIds.value);
  const settings = useMemo(() => settingsOf(book, build.data, asStored.resolved), [book, build, asStored]);
  const ghost = useMemo(() => pictureOf(book, asStored), [book, asStored]);
  const picture = useMemo(
    () => (outcome === asStored ? ghost : pictureOf(book, outcome)),
    [book, outcome, ghost],
  );
  const lacking = isLacking(outcome);
  return (
    <div class="match">
      {lacking ? (
        <PartialPanel book={book} outcome={outcome} id={build.id} />
      ) : (
        <Head book={book} outcome={outcome} name={build.data.name} sure={sure} />
      )}
      <HandlePanel
        book={book}
        build={build.data}
        resolved={outcome.resolved}
        settings={settings}
        unset={asStored.resolved?.friction === null ? ["wheelFriction"] : []}
        effect={effectOf(outcome)}
      />
      {!lacking && (
        <section class="match-picture" aria-label="The picture">
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
          <MovesPanel outcome={outcome} shares={sure.doubt?.shares ?? null} />
        </section>
      )}
      {!lacking && <Verdict book={book} id={build.id} outcome={outcome} sure={sure} />}
    </div>
  );
}

function effectOf({ prediction }: Outcome): string | null {
  if (!prediction) return null;
  const { margin, angle } = prediction.worst.parked;
  return `worst ${angle.toFixed(0)}°: ${marginText(margin)}`;
}

/** What makes the pull: the cavity's pressure, or the propeller's speed. */
function atWhat(outcome: Outcome): string {
  const cavity = cavityPoint(outcome);
  if (cavity) return formatQuantity(cavity.pressure, "pressure");
  return rpmText(propellerPoint(outcome)?.speed ?? 0);
}

interface HeadProps {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly name: string;
  readonly sure: UncertaintyState;
}

/** The answer and its line of figures. */
function Head({ book, outcome, name, sure }: HeadProps) {
  const finding = findingOf(outcome);
  const { prediction } = outcome;
  if (!finding || !prediction)
    return (
      <div class="match-answer">
        <Answer sentence={`${name} can't be answered for yet.`}>This is missing:</Answer>
      </div>
    );
  const { parked, driving } = prediction.worst;
  const grams = formatFixed((prediction.suction / STANDARD_GRAVITY) * 1000, 0);
  return (
    <div class="match-answer" aria-live="polite">
      <Answer sentence={answerSentence(finding)}>
        Worst attitude {parked.angle.toFixed(0)}°:{" "}
        {parked.margin === null ? "no pull needed" : `${marginText(parked.margin)} the pull it needs`}
        {parked.governs.length > 0 && `, ${governsInWords(parked.governs)} governs`}
        {driving.margin !== null && `; driving ${marginText(driving.margin)} at ${driving.angle.toFixed(0)}°`}
        .{prediction.point && ` ${grams}\u2009g of pull at ${atWhat(outcome)}.`}
        {sure.worst && ` Sure to hold there: ${sureText(sure.worst.parked.parked.holds)}.`}
        <VerdictMarks book={book} outcome={outcome} />
      </Answer>
    </div>
  );
}
