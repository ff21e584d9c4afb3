import { useMemo } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import type { Table } from "../../../ui/table.ts";
import { type Chosen, describeReading, readingOf } from "../chosen.ts";
import { Facts, Notes } from "../Page.tsx";
import { PullTrend } from "./PullTrend.tsx";
import type { PullPage } from "./pullData.ts";
import { pullPlot } from "./pullPlot.ts";
import { reducedPulls } from "./pullReduced.ts";
import { pullSentence, ratioText } from "./pullSentence.ts";

const square = (width: number) => Math.max(300, Math.min(420, width * 0.7));
const grams = (load: number | null) => (load === null ? null : inUnit(load, "load"));

function tableOf(page: PullPage): Table {
  return {
    columns: [
      "test",
      "row",
      headed("voltage", "voltage"),
      headed("predicted", "load"),
      headed("held", "load"),
      headed("let go", "load"),
      "set aside",
    ],
    rows: page.points.map((point) => [
      page.tests[point.test].title,
      point.row + 1,
      point.voltage,
      grams(point.predicted),
      grams(point.held),
      grams(point.letGo),
      point.aside ?? "",
    ]),
  };
}

export interface PullSectionProps {
  readonly page: PullPage;
  readonly name: string;
  readonly tests: readonly StoredOf<"tests">[];
  readonly chosen: Chosen;
  /** whether the page's answer has already said it */
  readonly answered: boolean;
  /** whether a calibration on the page sets the pulls against their predictions */
  readonly compared: boolean;
}

/** Pulls brought to one charge, what is left of a drift and how they scatter; set against their predictions where no calibration does it. */
export function PullSection({ page, name, tests, chosen, answered, compared }: PullSectionProps) {
  const pulls = useMemo(() => reducedPulls(page), [page]);
  return (
    <section>
      <h2>{compared ? "Pulls at one charge" : "Pulls, measured against predicted"}</h2>
      {!answered && !compared && <p>{pullSentence(page)}</p>}
      {!compared && page.points.some((point) => point.predicted !== null) && (
        <PlotChart
          name={`pull ${name}`}
          sentence={`Loads that held and loads that let go with ${name}, against the predicted pull; on the dotted line both agree.`}
          plot={pullPlot(page)}
          height={square}
          tableTitle="Pulls"
          table={() => tableOf(page)}
          reading={readingOf(chosen, (key) => [...describeReading(tests, key), ...predictedLine(page, key)])}
        />
      )}
      <Facts
        facts={[
          { label: "measured over predicted with the gap as set, median (95 %)", text: ratioText(page) },
        ]}
      />
      {page.problem && <p class="near">{page.problem}</p>}
      {page.missing.map((message) => (
        <p key={message} class="near">
          {message}
        </p>
      ))}
      <Notes notes={page.ratio?.warnings ?? []} />
      {pulls && (
        <PullTrend pulls={pulls} name={name} tests={tests} chosen={chosen} table={() => tableOf(page)} />
      )}
    </section>
  );
}

function predictedLine(page: PullPage, key: string): string[] {
  const predicted = page.points.find((point) => point.key === key)?.predicted;
  return predicted == null ? [] : [`predicted ${formatQuantity(predicted, "load", { decimals: 0 })}`];
}
