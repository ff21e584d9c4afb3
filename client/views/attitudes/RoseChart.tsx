import { polarHeight } from "../../charts/draw/polar/layout.ts";
import { Figure } from "../../charts/Figure.tsx";
import { polarPicture } from "../../charts/polar.ts";
import { bandText, beyondRim, roseSentence, standLines } from "./attitudeWords.ts";
import type { Rose } from "./rose.ts";
import { rosePlot } from "./rosePlot.ts";
import { type Stand, standAt } from "./stand.ts";
import { roseTable } from "./table.ts";

export interface RoseChartProps {
  readonly rose: Rose;
  /** the attitude asked about, where one is */
  readonly asked: Stand | null;
  readonly onAsk: (angle: number) => void;
}

/** The half-rose, read by angle, how to read it, its table, and ways to save it. */
export function RoseChart({ rose, asked, onAsk }: RoseChartProps) {
  const beyond = beyondRim(rose);
  return (
    <Figure
      sentence={roseSentence(rose)}
      picture={polarPicture(rosePlot(rose, asked))}
      height={polarHeight}
      name={`attitudes ${rose.outcome.build.name}`}
      table={() => roseTable(rose)}
      reading={{
        label: "Angles",
        describe: (key) => standLines(standAt(rose.input.vehicle, rose.pull, Number(key)), rose),
        chosen: asked && String(asked.angle),
        onChoose: (key) => onAsk(Number(key)),
      }}
    >
      <p class="quiet small">
        Where the needed curve stays inside the arc of the pull made, the pull is enough. Dots: parked;
        dashes: driving nose uphill. The rings outside name what gives first, parked inside, driving outside.
        {` ${bandText(rose)}`}
        {beyond && ` ${beyond}`}
      </p>
    </Figure>
  );
}
