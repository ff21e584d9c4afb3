import { useMemo, useRef } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { motionMs } from "../../charts/motion.ts";
import { overlayIds, settled } from "../../state/build.ts";
import { type Outcome, solve } from "../../state/outcome.ts";
import type { UncertaintyState } from "../../state/useUncertainty.ts";
import { Missing } from "../../ui/Missing.tsx";
import { Resting } from "../../ui/Resting.tsx";
import { letterAt } from "../compare/letterAt.ts";
import { fanLabel, leakLabel, pictureSentence } from "./labels.ts";
import { MatchChart } from "./MatchChart.tsx";
import { MOST_OVERLAYS, OverlayPicker } from "./OverlayPicker.tsx";
import { OverlayTable } from "./OverlayTable.tsx";
import { OVERLAY_DASHES, type Overlay } from "./overlays.ts";
import { type Picture, pictureOf, steadied } from "./picture.ts";
import { BasedOn } from "./Reasons.tsx";
import { ThrustSection } from "./thrust/ThrustSection.tsx";

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

/** The build's picture as it stands, and as it is tried: the same where nothing is. */
function usePictures(book: Book, asStored: Outcome, outcome: Outcome) {
  const last = useRef<Picture | null>(null);
  const ghost = useMemo(() => pictureOf(book, asStored), [book, asStored]);
  const picture = useMemo(() => {
    if (outcome === asStored) return ghost;
    last.current = steadied(pictureOf(book, outcome), last.current ?? ghost);
    return last.current;
  }, [book, outcome, asStored, ghost]);
  return { ghost, picture };
}

interface MatchPictureProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  readonly asStored: Outcome;
  /** with what is tried */
  readonly outcome: Outcome;
  readonly sure: UncertaintyState;
}

/** The picture of a build that has numbers, what is laid over it, and what it is based on. */
export function MatchPicture({ book, build, asStored, outcome, sure }: MatchPictureProps) {
  const overlays = useOverlays(book, build.id, overlayIds.value);
  const { ghost, picture } = usePictures(book, asStored, outcome);
  const laid = useMemo(
    () => (
      <>
        <OverlayPicker book={book} shown={build.id} />
        {picture && <OverlayTable book={book} overlays={overlays} />}
      </>
    ),
    [book, build.id, picture === null, overlays],
  );
  const duration = motionMs(settled.value);
  const spread = sure.doubt?.point ?? null;
  const chart = useMemo(
    () =>
      picture && (
        <MatchChart
          drawing={{
            picture,
            ghost: outcome === asStored ? null : ghost,
            overlays,
            fan: fanLabel(book, outcome),
            leak: leakLabel(outcome),
            duration,
            spread,
          }}
          sentence={pictureSentence(outcome)}
          fileName={`match ${build.data.name}`.toLowerCase().replace(/[^a-z0-9]+/g, "-")}
        />
      ),
    [book, build, picture, outcome, asStored, ghost, overlays, duration, spread],
  );
  return (
    <section class="page-main match-picture" aria-label="The picture">
      {outcome.prediction && outcome.resolved?.propeller ? (
        <ThrustSection
          book={book}
          id={build.id}
          asStored={asStored}
          outcome={outcome}
          spread={sure.doubt?.suction ?? null}
        />
      ) : (
        (chart ?? <Missing outcome={outcome} build={build.id} />)
      )}
      {laid}
      {outcome.prediction && <Resting panel={BasedOn} props={{ book, outcome }} />}
    </section>
  );
}
