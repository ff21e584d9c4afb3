import { RPM } from "../../../../shared/physics/motor.ts";
import { formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { type Cell, known, type Table } from "../../../ui/table.ts";
import { type Chosen, describeReading, readingOf } from "../chosen.ts";
import { testName } from "../typed.ts";
import { plainResidualSd } from "./bands.ts";
import type { RotorFamily } from "./family.ts";
import { groupPlot } from "./groupPlot.ts";
import { type BandAt, curvePlot, residualPlot } from "./plots.ts";
import type { Shown } from "./shown.ts";

const tall = (width: number) => Math.max(300, Math.min(460, width * 0.58));
const low = (width: number) => (width < 500 ? 190 : 180);
const STRIP = 26;
const FRAME = 90;
const PERCENT = 100;

function tableOf(family: RotorFamily): Table {
  const scatter = plainResidualSd(family);
  return {
    columns: [
      "test",
      "row",
      headed("speed", "speed"),
      headed("diameter", "length"),
      headed("flow", "flow"),
      headed("pressure", "pressure"),
      "φ",
      "ψ",
      "λ",
      "residual, %",
      "set aside",
    ],
    rows: family.readings.map((reading): Cell[] => [
      testName(family.tests[reading.test]),
      reading.row + 1,
      inUnit(reading.rpm * RPM, "speed"),
      inUnit(reading.diameter, "length"),
      inUnit(reading.flow, "flow"),
      inUnit(reading.pressure, "pressure"),
      reading.phi,
      known(reading.psi, family.fit?.residualSd),
      reading.lambda,
      reading.residual === null ? null : known(reading.residual * PERCENT, scatter && scatter * PERCENT),
      reading.aside ?? "",
    ]),
  };
}

/** Coefficients are small: text with four digits in the place of three decimals. */

const COEFFICIENT_WORDS = {
  psi: "Pressure coefficient",
  lambda: "Power coefficient",
  efficiency: "Efficiency",
} as const;

function what(family: RotorFamily, shown: Shown): string {
  const { name } = family.rotor.data;
  if (shown.as !== "pressure")
    return `${COEFFICIENT_WORDS[shown.as]} of ${name} against its flow coefficient`;
  const size = formatQuantity(shown.diameter, "length");
  return `Pressure of ${name} against flow at ${formatQuantity(shown.rpm * RPM, "speed", { decimals: 0 })} and ${size}`;
}

export interface RotorChartsProps {
  readonly family: RotorFamily;
  readonly shown: Shown;
  readonly bandAt: BandAt;
  readonly chosen: Chosen;
}

/** The curve, its residuals on the same x, and the residuals by test and speed. */
export function RotorCharts({ family, shown, bandAt, chosen }: RotorChartsProps) {
  const { name } = family.rotor.data;
  const common = {
    table: () => tableOf(family),
    tableTitle: "Readings",
    reading: readingOf(chosen, (key) => describeReading(family.tests, key)),
  };
  const groups = groupPlot(family);
  return (
    <>
      <PlotChart
        {...common}
        name={`${name} curve`}
        sentence={`${what(family, shown)}: readings by test, the fitted curve, and its 95 % bands; dashed beyond the tested range.`}
        plot={curvePlot(family, shown, bandAt)}
        height={tall}
      />
      {family.fit && family.fit.dof > 0 && (
        <>
          <h2>Residuals along the curve</h2>
          <PlotChart
            {...common}
            name={`${name} residuals`}
            sentence={`What the curve of ${name} misses each reading by, in percent of blocked pressure.`}
            plot={residualPlot(family, shown, bandAt)}
            height={low}
          />
          <h2>Residuals by test and speed</h2>
          <PlotChart
            {...common}
            name={`${name} residuals by speed`}
            sentence={`Residuals of ${name}, a strip for each test and speed; a strip off zero tells of a wrong or nominal speed.`}
            plot={groups}
            height={() => FRAME + (groups.strips?.length ?? 0) * STRIP}
          />
        </>
      )}
    </>
  );
}
