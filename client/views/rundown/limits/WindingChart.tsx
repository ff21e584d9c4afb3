import type { Limits } from "../../../../shared/decide/limits/limits.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import type { Table } from "../../../ui/table.ts";
import { windingSentence } from "./limitWords.ts";
import { warmUpWords, windingPlot } from "./windingPlot.ts";

/** @returns the winding from cold, as numbers */
export function windingTable({ warmUp }: Limits): Table {
  return {
    columns: ["time from cold, s", headed("winding", "temperature")],
    rows: (warmUp?.samples ?? []).map(({ time, temperature }) => [time, inUnit(temperature, "temperature")]),
  };
}

/** The winding against time from cold, to its limit and dashed beyond it. */
export function WindingChart({ limits, build }: { limits: Limits; build: string }) {
  const winding = limits.limits.find(({ key }) => key === "winding");
  const { warmUp } = limits;
  if (!warmUp || !winding) return null;
  const picture = { warmUp, limit: winding.limit, estimated: winding.estimated };
  return (
    <PlotChart
      sentence={windingSentence(limits)}
      plot={windingPlot(picture)}
      reads="along"
      height={() => 250}
      name={`winding ${build}`}
      table={() => windingTable(limits)}
      tableTitle="The winding as a table"
      reading={{ label: "Moments from cold", describe: (key) => warmUpWords(picture, key) }}
    >
      <p class="quiet small">
        At the supply of {(100 * limits.charge).toFixed(0)} % charge, held; a charge that runs down warms it
        less.{warmUp.timeToLimit !== null && " Dashed past the limit."}{" "}
        {winding.estimated && <Mark word="estimated" title="thermal figures of the motor" />}
      </p>
    </PlotChart>
  );
}
