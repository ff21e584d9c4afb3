import type { Book } from "../../../../shared/book/book.ts";
import { formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { href } from "../../../app/router.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { Answer } from "../../../ui/Answer.tsx";
import { gapText } from "../../../ui/gapWords.ts";
import { stiffnessText } from "../../../ui/stiffnessWords.ts";
import type { Table } from "../../../ui/table.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { AsideList } from "../AsideList.tsx";
import { type Chosen, describeReading, readingOf, useChosen } from "../chosen.ts";
import { type Fact, Facts, Notes, Page } from "../Page.tsx";
import { PointPanel } from "../PointPanel.tsx";
import { TestList } from "../TestList.tsx";
import { testName } from "../typed.ts";
import { type GearPage, gearPage } from "./gearData.ts";
import { gearPlot } from "./gearPlot.ts";
import { gearMissing, gearSentence, touchText } from "./gearSentence.ts";
import { gearFitBoard } from "./gearWorkings.ts";

const tall = (width: number) => Math.max(280, Math.min(400, width * 0.55));

function tableOf({ points, tests, tested }: GearPage): Table {
  const { fit } = tested;
  return {
    columns: [
      "test",
      "row",
      headed("load", "load"),
      headed("height", "length"),
      headed("line", "length"),
      "set aside",
    ],
    rows: points.map(({ test, row, load, height, aside }) => [
      testName(tests[test]),
      row + 1,
      inUnit(load, "load"),
      inUnit(height, "length"),
      fit ? inUnit((fit.heights[test] ?? fit.heights[0]) - load / fit.stiffness, "length") : null,
      aside ?? "",
    ]),
  };
}

/** A running gear's page: how far the lip comes down under load. */
export function GearView({ book, id }: { book: Book; id: string }) {
  const page = gearPage(book, id);
  const chosen = useChosen(page?.tests ?? []);
  if (!page) return null;
  return (
    <Page
      picture={<GearPicture page={page} chosen={chosen} />}
      meaning={<GearMeaning page={page} chosen={chosen} />}
    />
  );
}

function LogTest({ id }: { id: string }) {
  return (
    <p>
      <a class="button" href={href("bench", "new/ride-height", { gear: id })}>
        Log a ride-height test
      </a>
    </p>
  );
}

function GearPicture({ page, chosen }: { page: GearPage; chosen: Chosen }) {
  const { gear, points, tests, tested } = page;
  const { fit, uncertainty } = tested;
  return (
    <>
      <Answer sentence={gearSentence(page)}>
        {fit && `Stiffness ${stiffnessText(fit.stiffness, uncertainty)}.`}
      </Answer>
      {points.length === 0 ? (
        <LogTest id={gear.id} />
      ) : (
        <>
          <h2>Height of the lip by load</h2>
          <PlotChart
            name={`ride height ${gear.data.name}`}
            sentence={`Height of the lip against the load on a vehicle with ${gear.data.name}: readings and the fitted line.`}
            plot={gearPlot(page)}
            height={tall}
            tableTitle="Readings of the ride-height tests"
            table={() => tableOf(page)}
            reading={readingOf(chosen, (key) => describeReading(tests, key))}
          />
        </>
      )}
    </>
  );
}

function factsOf(page: GearPage): Fact[] {
  const { fit, uncertainty } = page.tested;
  if (!fit) return [];
  const touches = touchText(page);
  return [
    { label: "stiffness", text: stiffnessText(fit.stiffness, uncertainty) },
    { label: "lip without load", text: gapText(fit.heights[0], fit.standardErrors.height) },
    ...(touches ? [{ label: "skirt touches at", text: touches }] : []),
    ...(fit.residualSd === null
      ? []
      : [
          {
            label: "scatter",
            text: formatQuantity(fit.residualSd, "length", { decimals: 3 }),
          },
        ]),
  ];
}

function GearMeaning({ page, chosen }: { page: GearPage; chosen: Chosen }) {
  const { gear, tested, tests, builds } = page;
  return (
    <>
      {tests.length > 0 && <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />}
      <section>
        <h2>{gear.data.name}</h2>
        <Facts facts={factsOf(page)} />
        {tested.fit && <ShowWorking of={() => gearFitBoard(page)} />}
        <Notes notes={tested.fit?.warnings ?? []} />
        <p class="quiet">
          {builds.length === 0
            ? "No build runs on it yet: choose it in a build's form."
            : `In use by ${builds.map(({ data }) => data.name).join(", ")}.`}
        </p>
      </section>
      <section>
        <h2>What is missing</h2>
        <p>{gearMissing(page)}</p>
      </section>
      {tests.length > 0 && <TestList tests={tests} />}
      <AsideList tests={tests} onChoose={chosen.choose} />
    </>
  );
}
