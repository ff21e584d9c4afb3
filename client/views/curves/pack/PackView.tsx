import type { Book } from "../../../../shared/book/book.ts";
import { figureIn, formatFixed, formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { href } from "../../../app/router.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { Answer } from "../../../ui/Answer.tsx";
import { Caution } from "../../../ui/Caution.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import { known, type Table } from "../../../ui/table.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { AsideList } from "../AsideList.tsx";
import { type Chosen, describeReading, readingOf, useChosen } from "../chosen.ts";
import { type Fact, Facts, Notes, Page } from "../Page.tsx";
import { PointPanel } from "../PointPanel.tsx";
import { TestList } from "../TestList.tsx";
import { testName } from "../typed.ts";
import { type PackPage, packPage } from "./packData.ts";
import { packPlot, packResidualPlot, resistanceKey, resistancePlot } from "./packPlots.ts";
import {
  cellResistanceText,
  coldRiseOf,
  packMissing,
  packSentence,
  resistanceSentence,
} from "./packSentence.ts";
import { packFitBoard } from "./packWorkings.ts";

const MILLI = 1000;
const PERCENT = 100;
const tall = (width: number) => Math.max(280, Math.min(400, width * 0.55));
const low = (width: number) => (width < 500 ? 180 : 170);

function tableOf(page: PackPage): Table {
  const scatter = page.basis.basis === "missing" ? null : page.basis.fit?.residualSd;
  return {
    columns: [
      "test",
      "row",
      "charge, %",
      "cell, V",
      "cell, A",
      "open circuit, V",
      "residual, mV",
      "set aside",
    ],
    rows: page.points.map((point) => [
      testName(page.tests[point.test]),
      point.row + 1,
      point.charge * PERCENT,
      point.voltage,
      point.current,
      known(point.openCircuit, scatter),
      point.residual === null ? null : known(point.residual * MILLI, scatter && scatter * MILLI),
      point.aside ?? "",
    ]),
  };
}

/** A pack's page: what its cells give at which charge, and what that rests on. */
export function PackView({ book, id }: { book: Book; id: string }) {
  const page = packPage(book, id);
  const chosen = useChosen(page?.tests ?? []);
  if (!page) return null;
  return (
    <Page
      picture={<PackPicture page={page} chosen={chosen} />}
      meaning={<PackMeaning page={page} chosen={chosen} />}
    />
  );
}

function PackPicture({ page, chosen }: { page: PackPage; chosen: Chosen }) {
  const { name } = page.pack.data;
  const { basis } = page.basis;
  const common = {
    table: () => tableOf(page),
    tableTitle: "Readings of the discharge tests",
    reading: readingOf(chosen, (key) => describeReading(page.tests, key)),
  };
  return (
    <>
      <Answer sentence={packSentence(page)}>
        Resistance of a cell: {cellResistanceText(page)}. {basis === "chemistry" && <Mark word="estimated" />}
        {basis === "stated" && <Mark word="stated" />}
      </Answer>
      {basis === "missing" ? (
        <p>
          <a class="button" href={href("bench", "new/discharge", { pack: page.pack.id })}>
            Log a discharge test
          </a>
        </p>
      ) : (
        <>
          <h2>Voltage by charge</h2>
          <PlotChart
            {...common}
            name={`${name} voltage by charge`}
            sentence={`Open-circuit voltage of one cell of ${name} against its charge: readings with their sag under load taken out, and the curve in use.`}
            plot={packPlot(page)}
            height={tall}
          />
        </>
      )}
      <ResistancePicture page={page} />
      {page.points.length > 0 && basis !== "missing" && (
        <>
          <h2>Residuals</h2>
          <PlotChart
            {...common}
            name={`${name} residuals`}
            sentence={`What curve and resistance of ${name} miss each reading by.`}
            plot={packResidualPlot(page)}
            height={low}
          />
        </>
      )}
    </>
  );
}

function describeResistance({ basis }: PackPage, key: string): string[] {
  const told = basis.basis === "missing" ? [] : (basis.fit?.resistanceByCharge ?? []);
  const at = told.find((each) => resistanceKey(each) === key);
  if (!at) return [];
  const value = figureIn(at.resistance, "smallResistance", 1);
  const error = formatQuantity(at.standardError, "smallResistance", { decimals: 1 });
  return [`${formatFixed(PERCENT * at.charge, 0)}\u202f% charge`, `${value} ± ${error}`];
}

function resistanceTable({ basis }: PackPage): Table {
  const told = basis.basis === "missing" ? [] : (basis.fit?.resistanceByCharge ?? []);
  const shown = (ohms: number) => inUnit(ohms, "smallResistance");
  return {
    columns: [
      "charge, %",
      headed("resistance", "smallResistance"),
      headed("standard error", "smallResistance"),
    ],
    rows: told.map(({ charge, resistance, standardError }) => [
      charge * PERCENT,
      known(shown(resistance), shown(standardError)),
      known(shown(standardError), shown(standardError)),
    ]),
  };
}

/** How the resistance goes with the charge, where the discharges show that it does. */
function ResistancePicture({ page }: { page: PackPage }) {
  const plot = resistancePlot(page);
  const sentence = resistanceSentence(page);
  if (!plot || !sentence) return null;
  return (
    <>
      <h2>Resistance by charge</h2>
      <PlotChart
        name={`${page.pack.data.name} resistance by charge`}
        sentence={sentence}
        plot={plot}
        height={low}
        table={() => resistanceTable(page)}
        tableTitle="Resistance of a cell by its charge"
        reading={{ describe: (key) => describeResistance(page, key), label: "Charges" }}
      />
    </>
  );
}

function coldText(page: PackPage) {
  const rise = coldRiseOf(page);
  if (!rise) return "not stated";
  return (
    <>
      {rise.text} <Mark word={rise.mark} />
    </>
  );
}

function factsOf(page: PackPage): Fact[] {
  const { pack, basis } = page;
  const { cell, series, parallel } = pack.data;
  const fit = basis.basis === "missing" ? null : basis.fit;
  const capacity = fit?.capacity ?? cell.capacity;
  return [
    { label: "cells", text: `${series} in series, ${parallel} in parallel` },
    { label: "capacity of a cell", text: formatQuantity(capacity, "charge") },
    { label: "as stated", text: formatQuantity(cell.capacity, "charge") },
    { label: "resistance in the cold", text: coldText(page) },
    { label: "least under load", text: formatQuantity(cell.minimumVoltage, "voltage") },
    ...(fit?.residualSd
      ? [{ label: "scatter", text: `${formatFixed(fit.residualSd * MILLI, 1)}\u202fmV` }]
      : []),
  ];
}

function PackMeaning({ page, chosen }: { page: PackPage; chosen: Chosen }) {
  const { pack, basis } = page;
  const known = basis.basis === "missing" ? null : basis;
  return (
    <>
      {page.points.length > 0 && <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />}
      <section>
        <h2>One cell</h2>
        <Facts facts={[{ label: "resistance", text: cellResistanceText(page) }, ...factsOf(page)]} />
        {packFitBoard(page).workings.length > 0 && <ShowWorking of={() => packFitBoard(page)} />}
        <Notes notes={known?.notes ?? []} />
        {known?.chemistry && (
          <p>
            <Mark word="estimated" /> The curve is a published one of {known.chemistry.name}.{" "}
            {known.chemistry.caveat} Source: {known.chemistry.source} ({known.chemistry.licence}).
          </p>
        )}
      </section>
      <section>
        <h2>What is missing</h2>
        <p>{packMissing(page)}</p>
        {known?.basis !== "measured" && (
          <p>
            <a href={href("bench", "new/discharge", { pack: pack.id })}>Log a discharge test</a>
          </p>
        )}
      </section>
      {page.tests.length > 0 && <TestList tests={page.tests} />}
      <AsideList tests={page.tests} onChoose={chosen.choose} />
      <Caution>
        Lithium cells: never below the maker's minimum, discharge attended, stop if swollen or hot, fire-safe
        place.
      </Caution>
    </>
  );
}
