import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { motorAnswer } from "../../../../shared/book/motorBasis.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { formatFixed, formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { href } from "../../../app/router.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { Answer } from "../../../ui/Answer.tsx";
import { counted } from "../../../ui/count.ts";
import { Empty } from "../../../ui/Empty.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import { known, type Table } from "../../../ui/table.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { AsideList } from "../AsideList.tsx";
import { Brought } from "../Brought.tsx";
import { type Chosen, describeReading, readingOf, useChosen } from "../chosen.ts";
import { motorFitBoard } from "../fitWorkings.ts";
import { Facts, Notes, Page } from "../Page.tsx";
import { PointPanel } from "../PointPanel.tsx";
import { bandQuantile } from "../rotor/bands.ts";
import { contributionLines } from "../share.ts";
import { testName } from "../typed.ts";
import { type MotorPage, motorPage } from "./motorData.ts";
import { motorContributions, motorMissing } from "./motorFacts.ts";
import { currentPlot, motorResidualPlot, torquePlot, voltagePlot } from "./motorPlots.ts";
import { frictionText, motorSentence, resistanceText, throttleText, withError } from "./motorSentence.ts";

/** Constants that the fit settles: K_v and R. */
const CONSTANTS = 2;

const tall = (width: number) => Math.max(260, Math.min(380, width * 0.5));
const low = (width: number) => (width < 500 ? 180 : 170);

function tableOf(page: MotorPage): Table {
  return {
    columns: [
      "test",
      "row",
      headed("speed", "speed"),
      "voltage, V",
      "current, A",
      "V − R·I, V",
      "residual, mV",
      "set aside",
    ],
    rows: page.points.map((point) => [
      testName(page.tests[point.test]),
      point.row + 1,
      inUnit(point.rpm * RPM, "speed"),
      point.voltage,
      point.current,
      known(point.backEmf, page.basis.fit?.residualSd),
      known(point.residual * 1e3, page.basis.fit && page.basis.fit.residualSd * 1e3),
      point.aside ?? "",
    ]),
  };
}

/** A motor's page: voltage and current against speed, K_v, resistance and friction. */
export function MotorView({ book, id }: { book: Book; id: string }) {
  const page = motorPage(book, id);
  const chosen = useChosen(page?.tests ?? []);
  if (!page) return <UnknownMotor book={book} id={id} />;
  if (page.points.length === 0)
    return (
      <Empty
        title={motorSentence(page)}
        action={{ label: "Log a motor test", href: href("bench", "new/motor", { motor: id }) }}
      >
        <p>
          A motor test fills this page: voltage, current and speed without load and under two or three loads,
          and an ohmmeter's reading if you have one.
        </p>
      </Empty>
    );
  return (
    <Page
      picture={<MotorPicture page={page} chosen={chosen} />}
      meaning={<MotorMeaning page={page} chosen={chosen} />}
    />
  );
}

/** A motor whose constants neither its maker nor its tests give. */
function UnknownMotor({ book, id }: { book: Book; id: string }) {
  const answer = motorAnswer(book, id);
  if (answer?.basis !== "missing") return null;
  return (
    <Empty
      title={answer.missing.message}
      action={{ label: "Log a motor test", href: href("bench", "new/motor", { motor: id }) }}
    >
      {answer.rows.length > 0 && (
        <p>
          <a href={href("bench", null, { kind: "motor", part: `motor:${id}` })}>
            Its {counted(answer.testIds.length, "motor test")}
          </a>{" "}
          can be corrected or added to.
        </p>
      )}
    </Empty>
  );
}

function MotorPicture({ page, chosen }: { page: MotorPage; chosen: Chosen }) {
  const used = page.points.filter((point) => point.aside === null && point.fullThrottle).length;
  const quantile = used > CONSTANTS ? bandQuantile(used - CONSTANTS) : Number.NaN;
  const plot = voltagePlot(page, quantile);
  const common = {
    table: () => tableOf(page),
    tableTitle: "Rows of the motor tests",
    reading: readingOf(chosen, (key) => describeReading(page.tests, key)),
  };
  const { name } = page.motor.data;
  return (
    <>
      <Answer sentence={motorSentence(page)}>
        Friction {frictionText(page.basis.constants.frictionTorque, page.basis.constants.viscousTorque)}.{" "}
        {!page.basis.fit && <Mark word="stated" />}
      </Answer>
      <h2>Voltage, and what the winding leaves of it</h2>
      <PlotChart
        {...common}
        name={`${name} voltage`}
        sentence={`Voltage of ${name} against its speed; less the drop over the winding, the readings lie on the back-EMF line.`}
        plot={plot}
        height={tall}
      />
      <h2>Current</h2>
      <PlotChart
        {...common}
        name={`${name} current`}
        sentence={`Current of ${name} against its speed, and what friction alone draws.`}
        plot={currentPlot(page)}
        height={tall}
      />
      <h2>Torque of the shaft</h2>
      <PlotChart
        {...common}
        name={`${name} torque`}
        sentence={`Shaft torque of ${name} against its speed at one voltage, with the 95 % band that its constants leave; readings brought to that voltage.`}
        plot={torquePlot(page)}
        height={tall}
      />
      <h2>Residuals</h2>
      <PlotChart
        {...common}
        name={`${name} residuals`}
        sentence={`What the constants of ${name} miss each full-throttle reading of voltage by, in the 95 % bands of the fit and of one more reading.`}
        plot={motorResidualPlot(page)}
        height={low}
      />
    </>
  );
}

function MotorMeaning({ page, chosen }: { page: MotorPage; chosen: Chosen }) {
  const { fit, constants, notes, throttle } = page.basis;
  const begins = throttleText(page.basis);
  const missing = useMemo(() => motorMissing(page), [page]);
  const brought = useMemo(() => broughtOf(page), [page]);
  const facts = fit
    ? [
        { label: "speed constant", text: withError(fit.kv, fit.standardErrors.kv, "kv") },
        { label: "resistance", text: resistanceText(fit) },
        {
          label: "correlation of the two",
          text: fit.correlation === null ? "–" : formatFixed(fit.correlation, 2),
        },
        { label: "residual sd", text: `${formatFixed(fit.residualSd * 1e3, 1)}\u202fmV` },
      ]
    : [
        { label: "speed constant", text: <Stated text={formatQuantity(constants.kv, "kv")} /> },
        { label: "resistance", text: <Stated text={formatQuantity(constants.resistance, "resistance")} /> },
      ];
  return (
    <>
      <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />
      <section>
        <h2>Constants</h2>
        <Facts
          facts={[
            ...facts,
            { label: "friction", text: frictionText(constants.frictionTorque, constants.viscousTorque) },
            ...(begins ? [{ label: "turns from a throttle of", text: begins }] : []),
          ]}
        />
        {fit && <ShowWorking of={() => motorFitBoard(page)} />}
        <Notes notes={[...notes, ...(throttle?.warnings ?? [])]} />
      </section>
      <section>
        <h2>What is missing</h2>
        <p>{missing}</p>
      </section>
      <Brought title="What each test brought" tests={brought} />
      <AsideList tests={page.tests} onChoose={chosen.choose} />
    </>
  );
}

function broughtOf(page: MotorPage) {
  return motorContributions(page).map((contribution, i) => ({
    id: page.tests[i].id,
    title: testName(page.tests[i]),
    lines: contributionLines(contribution, {
      one: "row",
      figure: "the speed constant",
      alone: page.tests.length === 1,
    }),
  }));
}

function Stated({ text }: { text: string }) {
  return (
    <>
      {text} <Mark word="stated" />
    </>
  );
}
