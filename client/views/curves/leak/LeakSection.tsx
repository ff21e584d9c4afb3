import type { StoredOf } from "../../../../shared/model/record.ts";
import { asRead } from "../../../../shared/units/decimalMark.ts";
import { formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { known, type Table } from "../../../ui/table.ts";
import { FigureOf } from "../../../ui/working/FigureOf.tsx";
import { type Chosen, describeReading, readingOf } from "../chosen.ts";
import { percent } from "../curveWords.ts";
import { leakFitBoard } from "../fitWorkings.ts";
import { Notes } from "../Page.tsx";
import { type LeakGroup, type LeakPage, lipFlow } from "./leakData.ts";
import { groupTitle, leakPlot, leakResidualPlot } from "./leakPlot.ts";
import { againstLip, exponentText, leakSentence } from "./leakSentence.ts";

const tall = (width: number) => Math.max(280, Math.min(400, width * 0.55));
const low = (width: number) => (width < 500 ? 180 : 170);

function tableOf(page: LeakPage): Table {
  return {
    columns: [
      "test",
      "row",
      headed("pressure", "pressure"),
      headed("flow", "flow"),
      headed("lip gap", "flow"),
      "set aside",
    ],
    rows: page.groups.flatMap((group) =>
      group.points.map((point) => [
        page.tests[point.test].title,
        point.row + 1,
        inUnit(point.pressure, "pressure"),
        known(inUnit(point.flow, "flow"), group.fit && inUnit(group.fit.residualSd, "flow")),
        inUnit(lipFlow(group, point.pressure), "flow"),
        point.aside ?? "",
      ]),
    ),
  };
}

export interface LeakSectionProps {
  readonly page: LeakPage;
  readonly part: "skirt" | "surface";
  readonly name: string;
  readonly tests: readonly StoredOf<"tests">[];
  readonly chosen: Chosen;
  /** whether the page's answer has already said what the first group says */
  readonly answered: boolean;
}

/** Leak tests: readings, the fitted law, the lip gap's own prediction. */
export function LeakSection({ page, part, name, tests, chosen, answered }: LeakSectionProps) {
  const plot = leakPlot(page, part);
  const common = {
    tableTitle: "Readings of the leak tests",
    table: () => tableOf(page),
    reading: readingOf(chosen, (key) => describeReading(tests, key)),
  };
  return (
    <section>
      <h2>Leak</h2>
      {page.groups.slice(answered ? 1 : 0).map((group) => (
        <p key={group.key}>{leakSentence(group)}</p>
      ))}
      <PlotChart
        {...common}
        name={`leak ${name}`}
        sentence={`Leak flow against suction for ${name}, on logarithmic axes: readings, fitted law, and what the lip gap computes to.`}
        plot={plot}
        height={tall}
      />
      {page.groups.some((group) => group.fit) && (
        <PlotChart
          {...common}
          name={`leak ${name} residuals`}
          sentence={`What the fitted leak laws of ${name} miss each reading by.`}
          plot={leakResidualPlot(page)}
          height={low}
        />
      )}
      <LeakFits page={page} part={part} />
      <Notes notes={page.groups.flatMap((group) => group.fit?.warnings ?? [])} />
    </section>
  );
}

const figure = (group: LeakGroup, title: string, text: string) => (
  <FigureOf board={() => leakFitBoard(group)} title={title}>
    {text}
  </FigureOf>
);

function LeakFits({ page, part }: Pick<LeakSectionProps, "page" | "part">) {
  return (
    <ScrollTable label="Fitted leak laws">
      <table class="curves-table">
        <thead>
          <tr>
            <th scope="col">{part === "skirt" ? "surface, gap" : "skirt, gap"}</th>
            <th scope="col">C</th>
            <th scope="col">x</th>
            <th scope="col">residual sd</th>
            <th scope="col">against lip gap</th>
          </tr>
        </thead>
        <tbody>
          {page.groups.map((group) => {
            const ratio = againstLip(group);
            return (
              <tr key={group.key}>
                <th scope="row">{groupTitle(group, part)}</th>
                <td>
                  {group.fit
                    ? figure(group, "coefficient of the leak", scientific(group.fit.coefficient))
                    : "–"}
                </td>
                <td>{group.fit ? figure(group, "exponent of the leak", exponentText(group)) : "–"}</td>
                <td>{group.fit ? formatQuantity(group.fit.residualSd, "flow", { digits: 2 }) : "–"}</td>
                <td>{ratio === null ? "–" : percent(ratio, 3)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p class="quiet small">Q = C·Δp^x, C in m³/(s·Pa^x) at the air of the test.</p>
    </ScrollTable>
  );
}

const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** @returns "4.52·10⁻⁵" */
function scientific(value: number): string {
  const [digits, power] = value.toExponential(2).split("e");
  const raised = [...String(Math.abs(Number(power)))].map((digit) => SUPERSCRIPTS[Number(digit)]).join("");
  return `${asRead(digits)}·10${Number(power) < 0 ? "⁻" : ""}${raised}`;
}
