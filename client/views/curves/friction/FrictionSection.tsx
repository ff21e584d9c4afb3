import { useMemo } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import type { Table } from "../../../ui/table.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { type Chosen, describeReading, readingOf } from "../chosen.ts";
import { frictionFitBoard } from "../fitWorkings.ts";
import { Notes } from "../Page.tsx";
import { StrengthCharts } from "../strength/StrengthCharts.tsx";
import type { FrictionGroup } from "./frictionData.ts";
import { frictionPlot } from "./frictionPlot.ts";
import { frictionSentence } from "./frictionSentence.ts";
import { frictionStrength } from "./frictionStrength.ts";

const DEGREES = 180 / Math.PI;
const STRIP = 24;
const FRAME = 92;

const degrees = (angle: number | null) => (angle === null ? null : angle * DEGREES);

function tableOf(group: FrictionGroup): Table {
  return {
    columns: ["test", "row", "held, °", "slid, °", "set aside"],
    rows: group.slides.map((slide) => [
      slide.title,
      slide.row + 1,
      degrees(slide.held),
      degrees(slide.slid),
      slide.aside ?? "",
    ]),
  };
}

export interface FrictionSectionProps {
  readonly group: FrictionGroup;
  readonly surface: string;
  readonly tests: readonly StoredOf<"tests">[];
  readonly chosen: Chosen;
  /** whether the page's answer has already said it */
  readonly answered: boolean;
}

/** The slides of one contact on one surface: brackets of tilt, and the friction they make. */
export function FrictionSection({ group, surface, tests, chosen, answered }: FrictionSectionProps) {
  const { fit, problem } = group;
  const strength = useMemo(() => frictionStrength(group), [group]);
  return (
    <section>
      <h2>{group.title} on the tilt board</h2>
      {!answered && <p>{frictionSentence(group, surface)}</p>}
      {fit?.interval && (
        <p class="quiet">
          95 % interval of μ {formatFixed(fit.interval[0], 2)} to {formatFixed(fit.interval[1], 2)}
          {fit.sd > 0 && `; single slides scatter by ${formatFixed(fit.sd, 3)}`}.
        </p>
      )}
      {fit && <ShowWorking of={() => frictionFitBoard(group)} />}
      {problem && <p class="near">{problem}</p>}
      <PlotChart
        name={`friction ${group.title} ${surface}`}
        sentence={`Tilts that held and tilts that slid, ${group.title.toLowerCase()} on ${surface}, a strip a slide.`}
        plot={frictionPlot(group)}
        height={() => FRAME + group.slides.length * STRIP}
        tableTitle="Slides"
        table={() => tableOf(group)}
        reading={readingOf(chosen, (key) => describeReading(tests, key))}
      />
      <StrengthCharts
        strength={strength}
        name={`${group.title} on ${surface}`}
        tests={tests}
        chosen={chosen}
        table={() => tableOf(group)}
        title="Share of slides that slid, against tilt"
      />
      <Notes notes={fit?.warnings ?? []} />
    </section>
  );
}
