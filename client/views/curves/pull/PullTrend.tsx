import type { StoredOf } from "../../../../shared/model/record.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import type { Table } from "../../../ui/table.ts";
import { type Chosen, describeReading, readingOf } from "../chosen.ts";
import { StrengthCharts } from "../strength/StrengthCharts.tsx";
import { driftSentences, referenceText } from "./driftSentence.ts";
import type { ReducedPulls } from "./pullReduced.ts";
import { pulledPlot, reducedPlot } from "./trendPlot.ts";

const tall = (width: number) => Math.max(240, Math.min(300, width * 0.5));

export interface PullTrendProps {
  readonly pulls: ReducedPulls;
  readonly name: string;
  readonly tests: readonly StoredOf<"tests">[];
  readonly chosen: Chosen;
  readonly table: () => Table;
}

/** Pulls as made and brought to one charge through the model, whether a drift is left, and the distribution that they fit. */
export function PullTrend({ pulls, name, tests, chosen, table }: PullTrendProps) {
  const common = {
    table,
    tableTitle: "Pulls",
    reading: readingOf(chosen, (key) => describeReading(tests, key)),
  };
  return (
    <>
      <h3>As pulled</h3>
      <PlotChart
        {...common}
        name={`pull ${name} as pulled`}
        sentence={`Loads that held and that let go with ${name} as they were pulled, and what is predicted for each.`}
        plot={pulledPlot(pulls)}
        height={tall}
      />
      <h3>Brought to one charge</h3>
      <p class="quiet">{referenceText(pulls)}</p>
      {driftSentences(pulls).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <PlotChart
        {...common}
        name={`pull ${name} at one charge`}
        sentence={`The pulls with ${name} brought to one charge through the prediction, their median and its 95 % interval.`}
        plot={reducedPlot(pulls)}
        height={tall}
      />
      <StrengthCharts
        strength={pulls.strength}
        name={name}
        tests={tests}
        chosen={chosen}
        table={table}
        title="Share of pulls that let go, at one charge"
      />
    </>
  );
}
