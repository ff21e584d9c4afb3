import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Quantiles } from "../../../../shared/decide/uncertainty.ts";
import { motionMs } from "../../../charts/motion.ts";
import { overlayIds, settled } from "../../../state/build.ts";
import { type Outcome, solve } from "../../../state/outcome.ts";
import { MOST_OVERLAYS } from "../OverlayPicker.tsx";
import { OverlayTable } from "../OverlayTable.tsx";
import { OVERLAY_DASHES } from "../overlays.ts";
import { thrustPictureOf } from "./picture.ts";
import { ThrustChart } from "./ThrustChart.tsx";
import type { ThrustOverlay } from "./thrustPlot.ts";
import { thrustLabel, thrustSentence } from "./thrustWords.ts";

function useThrustOverlays(book: Book, shown: string, ids: readonly string[]): ThrustOverlay[] {
  return useMemo(() => {
    const builds = ids.flatMap((id) => book.builds.find((build) => build.id === id && id !== shown) ?? []);
    const pictures = builds.slice(0, MOST_OVERLAYS).flatMap(({ id, data }) => {
      const picture = thrustPictureOf(book, solve(book, data));
      return picture ? [{ id, name: data.name, picture }] : [];
    });
    return pictures.map((each, i) => ({
      ...each,
      letter: String.fromCharCode("A".charCodeAt(0) + i),
      dash: OVERLAY_DASHES[i],
    }));
  }, [book, shown, ids]);
}

interface ThrustSectionProps {
  readonly book: Book;
  /** of the build on the screen */
  readonly id: string;
  readonly asStored: Outcome;
  readonly outcome: Outcome;
  /** of the thrust [N] */
  readonly spread: Quantiles | null;
}

/** The picture of a build that a propeller presses on: no cavity, so thrust against speed. */
export function ThrustSection({ book, id, asStored, outcome, spread }: ThrustSectionProps) {
  const overlays = useThrustOverlays(book, id, overlayIds.value);
  const before = useMemo(() => thrustPictureOf(book, asStored), [book, asStored]);
  const picture = useMemo(
    () => (outcome === asStored ? before : thrustPictureOf(book, outcome)),
    [book, asStored, outcome, before],
  );
  if (!picture) return null;
  const { name } = outcome.build;
  return (
    <>
      <ThrustChart
        drawing={{
          picture,
          ghost: outcome === asStored ? null : before,
          overlays,
          spread,
          label: thrustLabel(book, outcome),
          duration: motionMs(settled.value),
        }}
        sentence={thrustSentence(outcome)}
        fileName={`match ${name}`.toLowerCase().replace(/[^a-z0-9]+/g, "-")}
      />
      <p class="quiet small">
        A propeller needs no cavity: it presses by its thrust, measured in free air. Next to a surface the
        thrust differs, within about one diameter; the figure does not know by how much.
      </p>
      <OverlayTable book={book} overlays={overlays} />
    </>
  );
}
