import { useMemo } from "preact/hooks";
import { isDestroyed } from "../../../shared/decide/verdict/states.ts";
import { polarHeight } from "../../charts/draw/polar/layout.ts";
import { plotPicture } from "../../charts/picture.ts";
import { polarPicture } from "../../charts/polar.ts";
import { Still } from "../../charts/Still.tsx";
import { bandText, beyondRim, roseSentence } from "../attitudes/attitudeWords.ts";
import { roseOf } from "../attitudes/rose.ts";
import { rosePlot } from "../attitudes/rosePlot.ts";
import { fanLabel, leakLabel, pictureSentence } from "../match/labels.ts";
import { matchPlot } from "../match/matchPlot.ts";
import { pictureOf } from "../match/picture.ts";
import { thrustPictureOf } from "../match/thrust/picture.ts";
import { thrustPlot } from "../match/thrust/thrustPlot.ts";
import { thrustLabel, thrustSentence } from "../match/thrust/thrustWords.ts";
import type { Sheet } from "./useSheet.ts";

/** Width of a page between its margins, and of the rose beside a table [px]: 186 mm, which A4 and Letter both have. */
const [PAGE, ROSE] = [703, 328];
const MATCH_HEIGHT = 0.39;
const LEAST_HEIGHT = 270;

interface Props {
  readonly sheet: Sheet;
}

/** As Match draws it: nothing laid over, nothing that glides. */
const AS_IT_IS = { ghost: null, overlays: [], duration: 0 } as const;

function thrustOf({ book, outcome, sure }: Sheet) {
  const picture = thrustPictureOf(book, outcome);
  const label = thrustLabel(book, outcome);
  return (
    picture && {
      plot: thrustPlot({ ...AS_IT_IS, picture, label, spread: sure.doubt?.suction ?? null }),
      sentence: thrustSentence(outcome),
    }
  );
}

function matchOf({ book, outcome, sure }: Sheet) {
  const picture = pictureOf(book, outcome);
  const labels = { fan: fanLabel(book, outcome), leak: leakLabel(outcome) };
  return (
    picture && {
      plot: matchPlot({ ...AS_IT_IS, ...labels, picture, spread: sure.doubt?.point ?? null }),
      sentence: pictureSentence(outcome),
    }
  );
}

/** Fan against leak, or a propeller's thrust against its speed. */
export function MatchStill({ sheet }: Props) {
  const { book, outcome, sure } = sheet;
  const of = useMemo(
    () => (outcome.resolved?.propeller ? thrustOf(sheet) : matchOf(sheet)),
    [book, outcome, sure.doubt],
  );
  if (!of) return null;
  return (
    <section aria-label="Match">
      <Still
        sentence={of.sentence}
        picture={plotPicture(of.plot)}
        height={(width) => Math.max(LEAST_HEIGHT, Math.round(MATCH_HEIGHT * width))}
        paper={PAGE}
      />
    </section>
  );
}

/** Pull needed against pull made, from floor to ceiling. */
export function RoseStill({ sheet: { outcome, sure, verdict } }: Props) {
  const state = verdict.verdict?.state ?? null;
  const doubt = state !== null && isDestroyed(state) ? null : sure.doubt;
  const rose = useMemo(() => roseOf(outcome, doubt), [outcome, doubt]);
  if (!rose) return null;
  return (
    <section aria-label="Attitudes">
      <h2>Needed against made</h2>
      <Still
        sentence={roseSentence(rose)}
        picture={polarPicture(rosePlot(rose, null))}
        height={polarHeight}
        paper={ROSE}
      />
      <p class="quiet small">
        Dots: parked; dashes: driving nose uphill. {bandText(rose)} {beyondRim(rose)}
      </p>
    </section>
  );
}
