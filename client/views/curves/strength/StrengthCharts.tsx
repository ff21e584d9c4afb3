import { useMemo } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import type { Table } from "../../../ui/table.ts";
import { type Chosen, describeReading, readingOf } from "../chosen.ts";
import { capital } from "../curveWords.ts";
import type { Strength } from "./strength.ts";
import { distributionPlot, strengthResidualPlot } from "./strengthPlots.ts";
import { distributionSentence } from "./strengthSentence.ts";

const tall = (width: number) => Math.max(260, Math.min(340, width * 0.5));
const STRIP = 24;
const FRAME = 92;

export interface StrengthChartsProps {
  readonly strength: Strength;
  readonly name: string;
  readonly tests: readonly StoredOf<"tests">[];
  readonly chosen: Chosen;
  readonly table: () => Table;
  readonly title: string;
}

/** The distribution that the trials fit, and what each trial lies off it by. */
export function StrengthCharts({ strength, name, tests, chosen, table, title }: StrengthChartsProps) {
  const distribution = useMemo(() => distributionPlot(strength), [strength]);
  const { words, trials, fit } = strength;
  if (!fit) return null;
  const common = {
    table,
    tableTitle: `${capital(words.one)}s`,
    reading: readingOf(chosen, (key) => describeReading(tests, key)),
  };
  return (
    <>
      <h3>{title}</h3>
      <PlotChart
        {...common}
        name={`${name} distribution`}
        sentence={distributionSentence(strength, name)}
        plot={distribution}
        height={tall}
      />
      <h3>Residuals</h3>
      <PlotChart
        {...common}
        name={`${name} residuals`}
        sentence={`What each ${words.one} with ${name} lies off the fit by; the band is the scatter of single ${words.one}s.`}
        plot={strengthResidualPlot(strength)}
        height={() => FRAME + trials.length * STRIP}
      />
    </>
  );
}
