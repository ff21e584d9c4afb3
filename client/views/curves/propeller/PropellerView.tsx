import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { figureIn, formatFixed, formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { href } from "../../../app/router.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { Answer } from "../../../ui/Answer.tsx";
import { counted } from "../../../ui/count.ts";
import { Empty } from "../../../ui/Empty.tsx";
import { known, type Table } from "../../../ui/table.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { AsideList } from "../AsideList.tsx";
import { type Chosen, describeReading, readingOf, useChosen } from "../chosen.ts";
import { offBy } from "../curveWords.ts";
import { Facts, Notes, Page } from "../Page.tsx";
import { PointPanel } from "../PointPanel.tsx";
import { testName } from "../typed.ts";
import { type PropellerPage, propellerPage, thrustContributions } from "./propellerData.ts";
import { coefficientPlot, thrustResidualPlot } from "./propellerPlots.ts";
import { coefficientText, driftText, propellerSentence } from "./propellerSentence.ts";
import { propellerFitBoard } from "./propellerWorkings.ts";

const tall = (width: number) => Math.max(250, Math.min(340, width * 0.45));
const low = (width: number) => (width < 500 ? 180 : 170);

const relative = (sd: number, of: number) => (of > 0 ? sd / of : 0);

function tableOf({ readings, tests, fit }: PropellerPage): Table {
  return {
    columns: [
      "test",
      "row",
      headed("speed", "speed"),
      "Re",
      "C_T",
      "C_P",
      headed("thrust", "load"),
      headed("residual", "load"),
      "set aside",
    ],
    rows: readings.map((each) => [
      testName(tests[each.test]),
      each.row + 1,
      inUnit(each.rpm * RPM, "speed"),
      each.reynolds,
      known(each.thrust, fit && relative(fit.residualSd.thrust, each.force) * each.thrust),
      each.power,
      inUnit(each.force, "load"),
      each.residual === null
        ? null
        : known(inUnit(each.residual, "load"), fit && inUnit(fit.residualSd.thrust, "load")),
      each.aside ?? "",
    ]),
  };
}

/** A propeller's page: thrust and power coefficients against the Reynolds number, and what they rest on. */
export function PropellerView({ book, id }: { book: Book; id: string }) {
  const page = useMemo(() => propellerPage(book, id), [book, id]);
  const chosen = useChosen(page?.tests ?? []);
  if (!page) return null;
  if (page.readings.length === 0)
    return (
      <Empty
        title={propellerSentence(page)}
        action={{ label: "Log a thrust test", href: href("bench", "new/thrust", { rotor: id }) }}
      >
        <p>
          A thrust test fills this page: speed, thrust on a scale and the motor's current at three throttle
          settings or more, a clear diameter of air all round.
        </p>
      </Empty>
    );
  return (
    <Page
      picture={<PropellerPicture page={page} chosen={chosen} />}
      meaning={<PropellerMeaning page={page} chosen={chosen} />}
    />
  );
}

function driftSentence({ fit }: PropellerPage): string {
  if (!fit) return "";
  const thrust = `C_T ${driftText(fit, "thrust")}`;
  const power = fit.power ? `, C_P ${driftText(fit, "power")}` : "";
  return `Over the speeds tested ${thrust}${power}.`;
}

function PropellerPicture({ page, chosen }: { page: PropellerPage; chosen: Chosen }) {
  const { name } = page.rotor.data;
  const common = {
    table: () => tableOf(page),
    tableTitle: "Rows of the thrust tests",
    reading: readingOf(chosen, (key) => describeReading(page.tests, key)),
  };
  const hasPower = page.readings.some((reading) => reading.power !== null);
  return (
    <>
      <Answer sentence={propellerSentence(page)}>{driftSentence(page)}</Answer>
      {page.missing && <p class="near">{page.missing.message}</p>}
      <h2>Thrust</h2>
      <PlotChart
        {...common}
        name={`${name} thrust`}
        sentence={`Thrust coefficient of ${name} against its Reynolds number: readings, fitted line, its 95 % band.`}
        plot={coefficientPlot(page, "thrust")}
        height={tall}
      />
      {hasPower && (
        <>
          <h2>Power</h2>
          <PlotChart
            {...common}
            name={`${name} power`}
            sentence={`Power coefficient of ${name} against its Reynolds number: readings, fitted line, its 95 % band.`}
            plot={coefficientPlot(page, "power")}
            height={tall}
          />
        </>
      )}
      {page.fit && (
        <>
          <h2>Residuals of the thrust</h2>
          <PlotChart
            {...common}
            name={`${name} residuals`}
            sentence={`What the fitted line of ${name} misses each thrust by.`}
            plot={thrustResidualPlot(page)}
            height={low}
          />
        </>
      )}
    </>
  );
}

function factsOf({ fit, chord }: PropellerPage) {
  const ratio = `${formatFixed(chord.ratio, 3)} of the diameter${chord.assumed ? ", not stated: it only labels Re" : ""}`;
  if (!fit) return [{ label: "chord at 75 % radius", text: ratio }];
  const [least, most] = fit.testedReynolds.map((re) => formatFixed(Math.round(re), 0));
  const { thrust, power } = fit.residualSd;
  return [
    { label: "C_T", text: coefficientText(fit, "thrust") },
    { label: "C_T over the range", text: driftText(fit, "thrust") },
    { label: "C_P", text: coefficientText(fit, "power") },
    { label: "C_P over the range", text: driftText(fit, "power") },
    {
      label: "residual sd",
      text:
        fit.dof.thrust > 0
          ? `${formatQuantity(thrust, "load", { decimals: 1 })}${power === null ? "" : `, ${formatFixed(power, 2)}\u202fW`}`
          : "none left over",
    },
    { label: "stated at Re", text: formatFixed(Math.round(fit.referenceReynolds), 0) },
    { label: "Re tested", text: `${least} to ${most}` },
    { label: "chord at 75 % radius", text: ratio },
  ];
}

function PropellerMeaning({ page, chosen }: { page: PropellerPage; chosen: Chosen }) {
  return (
    <>
      <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />
      <section>
        <h2>Coefficients</h2>
        <Facts facts={factsOf(page)} />
        {page.fit && <ShowWorking of={() => propellerFitBoard(page)} />}
        <Notes notes={page.fit?.warnings ?? []} />
      </section>
      <section>
        <h2>What each test brings</h2>
        <ul class="curves-list">
          {thrustContributions(page).map((each) => (
            <li key={each.test.id}>
              <a href={href("bench", each.test.id)}>{testName(each.test)}</a>
              <span class="quiet small">
                {" "}
                {each.used === 0
                  ? "every row is set aside"
                  : `${counted(each.used, "row")} used, ${formatQuantity(each.diameter, "length")}, ${figureIn(each.slowest * RPM, "speed", 0)} to ${formatQuantity(each.fastest * RPM, "speed", { decimals: 0 })}`}
                {each.off !== null &&
                  `; its thrusts lie ${offBy(each.off)}, as a speed read ${offBy(-each.off / 2)} would`}
              </span>
            </li>
          ))}
        </ul>
      </section>
      <AsideList tests={page.tests} onChoose={chosen.choose} />
    </>
  );
}
