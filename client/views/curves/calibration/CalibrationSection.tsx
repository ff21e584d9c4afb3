import { useMemo, useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { counted } from "../../../ui/count.ts";
import { SelectField } from "../../../ui/Field.tsx";
import { gapText } from "../../../ui/gapWords.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { type Chosen, describeReading, readingOf } from "../chosen.ts";
import { listed, percent } from "../curveWords.ts";
import { calibrationBoard } from "../fitWorkings.ts";
import { type Fact, Facts } from "../Page.tsx";
import { testName } from "../typed.ts";
import { type CalibrationPage, calibrationPage, type Pair, pairsWith } from "./calibrationData.ts";
import { calibratedLeakPlot, calibratedPullPlot } from "./calibrationPlots.ts";
import {
  calibrationSentence,
  factorSentence,
  factorText,
  frictionText,
  intervalText,
  leakOffText,
  missingOf,
  offText,
  outsideOf,
  reachedText,
} from "./calibrationSentence.ts";
import { leakTable, pullTable } from "./calibrationTables.ts";

const square = (width: number) => Math.max(300, Math.min(420, width * 0.7));

export interface CalibrationSectionProps {
  readonly book: Book;
  /** whose page it is */
  readonly part: "skirt" | "surface";
  readonly id: string;
  readonly chosen: Chosen;
}

/** Measured against predicted: pulls and leak readings, before the tests and as they calibrate gap and pull factor. */
export function CalibrationSection({ book, part, id, chosen }: CalibrationSectionProps) {
  const pairs = useMemo(() => pairsWith(book, part, id), [book, part, id]);
  const [picked, setPicked] = useState<string | null>(null);
  const other = part === "skirt" ? "surface" : "skirt";
  const pair = pairs.find((each) => each[other].id === picked) ?? pairs[0];
  const page = useMemo(() => pair && calibrationPage(book, pair), [book, pair]);
  if (!pair) return null;
  return (
    <section>
      <h2>Measured against predicted</h2>
      {pairs.length > 1 && (
        <SelectField
          label={part === "skirt" ? "On surface" : "With skirt"}
          value={pair[other].id}
          options={pairs.map((each) => ({ value: each[other].id, label: each[other].data.name }))}
          onChange={setPicked}
        />
      )}
      {page ? <Found page={page} chosen={chosen} /> : <NoAnswer pair={pair} />}
    </section>
  );
}

function NoAnswer({ pair }: { pair: Pair }) {
  return <p class="near">The tests can't be brought together: {pair.calibration.why}</p>;
}

function Found({ page, chosen }: { page: CalibrationPage; chosen: Chosen }) {
  const { pair, leaks, tests } = page;
  const names = `${pair.skirt.data.name} on ${pair.surface.data.name}`;
  return (
    <>
      <p>
        {calibrationSentence(page)} {factorSentence(page)}{" "}
        {pair.builds.length > 0 &&
          `${listed(pair.builds)} ${pair.builds.length === 1 ? "stands" : "stand"} on it.`}
      </p>
      <PlotChart
        name={`calibrated pull ${names}`}
        sentence={`Loads that held and that let go with ${names} against the predicted pull: solid as calibrated, dashed as predicted before the tests; on the dotted line both agree.`}
        plot={calibratedPullPlot(page)}
        height={square}
        tableTitle="Pulls against predicted"
        table={() => pullTable(page)}
        reading={readingOf(chosen, (key) => [...describeReading(tests, key), ...pullLines(page, key)])}
      />
      <p class="quiet small">
        Solid bars: predicted with gap and pull factor calibrated; dashed: before the tests. The band is twice
        the scatter of single pulls.
      </p>
      {leaks.length > 0 && (
        <PlotChart
          name={`calibrated leak ${names}`}
          sentence={`Leak flows of ${names} against the flow that the lip gap computes to, with the gap calibrated and as set; on the dotted line both agree.`}
          plot={calibratedLeakPlot(page)}
          height={square}
          tableTitle="Leak readings against predicted"
          table={() => leakTable(page)}
          reading={readingOf(chosen, (key) => [...describeReading(tests, key), ...leakLines(page, key)])}
        />
      )}
      <Facts facts={factsOf(page)} />
      <ShowWorking of={() => calibrationBoard(page)} />
      <Contributions page={page} />
      <Outside page={page} />
      <ul class="curves-notes">
        {missingOf(page).map((message) => (
          <li key={message}>{message}</li>
        ))}
      </ul>
    </>
  );
}

function pullLines({ pulls }: CalibrationPage, key: string): string[] {
  const pull = pulls.find((each) => key === each.key || key === `${each.key}-set`);
  if (!pull) return [];
  const [now, before] = [pull.predicted, pull.before].map((load) =>
    formatQuantity(load, "load", { decimals: 0 }),
  );
  return [`predicted ${now}, ${before} before the tests`, offText(pull)];
}

function leakLines({ leaks }: CalibrationPage, key: string): string[] {
  const leak = leaks.find((each) => key === each.key || key === `${each.key}-set`);
  if (!leak) return [];
  const [now, before] = [leak.predicted, leak.before].map((flow) => formatQuantity(flow, "flow"));
  return [`predicted ${now}, ${before} with the gap as set`, leakOffText(leak)];
}

function factsOf(page: CalibrationPage): Fact[] {
  const { pair, answer } = page;
  const { prior } = pair.calibration;
  const facts: Fact[] = [
    { label: "gap before the tests", text: gapText(prior.gap.mean, prior.gap.sd, 2) },
    { label: "gap calibrated", text: gapText(answer.gap.mean, answer.gap.sd, 2) },
    {
      label: "95 %",
      text: intervalText(answer.gap, (gap) => formatQuantity(gap, "length", { uncertainty: answer.gap.sd })),
    },
    { label: "pull factor before the tests", text: factorText(prior.pullFactor.median, prior.pullFactor.sd) },
    {
      label: "pull factor calibrated",
      text: answer.pullFactor
        ? factorText(answer.pullFactor.mean, answer.pullFactor.sd)
        : "no pull measures it",
    },
    { label: "friction before the tests", text: frictionText(prior.friction.mean, prior.friction.sd) },
    {
      label: "friction calibrated",
      text: answer.friction
        ? frictionText(answer.friction.mean, answer.friction.sd)
        : "not told: no pull along",
    },
    { label: "reached within twice the scatter", text: reachedText(page) },
  ];
  if (answer.scatter !== null)
    facts.push({ label: "scatter of a single pull", text: percent(answer.scatter) });
  return facts;
}

function Contributions({ page }: { page: CalibrationPage }) {
  const { contributions, tests, pair } = page;
  const { pullsTellGap } = pair.calibration;
  const nameOf = (id: string) => {
    const test = tests.find((each) => each.id === id);
    return test ? testName(test) : id;
  };
  return (
    <>
      <h3>What each test contributed</h3>
      <table class="curves-table calibration-tests">
        <thead>
          <tr>
            <th scope="col">test</th>
            <th scope="col">readings</th>
            <th scope="col">gap without it</th>
            {!pullsTellGap && <th scope="col">pull factor without it</th>}
          </tr>
        </thead>
        <tbody>
          {contributions.map(({ testId, readings, without, factor }) => (
            <tr key={testId}>
              <th scope="row">{nameOf(testId)}</th>
              <td>{readings}</td>
              <td>{without ? gapText(without.mean, without.sd, 2) : "–"}</td>
              {!pullsTellGap && <td>{factor ? factorText(factor.mean, factor.sd) : "–"}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Outside({ page }: { page: CalibrationPage }) {
  const { tests } = page;
  const outside = outsideOf(page);
  if (outside.length === 0) return null;
  return (
    <>
      <h3>{counted(outside.length, "pull")} outside</h3>
      <ul class="curves-notes">
        {outside.map((pull) => {
          const test = tests.find((each) => each.id === pull.testId);
          return (
            <li key={pull.key}>
              {test ? testName(test) : pull.testId}, row {pull.row + 1}: {offText(pull)}.
            </li>
          );
        })}
      </ul>
    </>
  );
}
