import { useRef } from "preact/hooks";
import type { Limits } from "../../../../shared/decide/limits/limits.ts";
import { CELSIUS_ZERO } from "../../../../shared/physics/constants.ts";
import { Chart } from "../../../charts/Chart.tsx";
import { DataTable } from "../../../ui/DataTable.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import { SaveChart } from "../../../ui/SaveChart.tsx";
import type { Table } from "../../../ui/table.ts";
import { drawWinding, windingHeight } from "./drawWinding.ts";
import { windingSentence } from "./words.ts";

/** @returns the winding from cold, as numbers */
export function windingTable({ warmUp }: Limits): Table {
  return {
    columns: ["time from cold (s)", "winding (°C)"],
    rows: (warmUp?.samples ?? []).map(({ time, temperature }) => [time, temperature - CELSIUS_ZERO]),
  };
}

/** The winding against time from cold, to its limit and dashed beyond it. */
export function WindingChart({ limits, build }: { limits: Limits; build: string }) {
  const svg = useRef<SVGSVGElement | null>(null);
  const winding = limits.limits.find(({ key }) => key === "winding");
  const { warmUp } = limits;
  if (!warmUp || !winding) return null;
  const picture = { warmUp, limit: winding.limit, estimated: winding.estimated };
  const name = `winding ${build}`.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  return (
    <>
      <Chart
        sentence={windingSentence(limits)}
        height={windingHeight}
        svgRef={svg}
        draw={(element, size) => drawWinding(element, picture, size)}
      />
      <p class="quiet small">
        At the supply of {(100 * limits.charge).toFixed(0)} % charge, held; a charge that runs down warms it
        less.{warmUp.timeToLimit !== null && " Dashed past the limit."}{" "}
        {winding.estimated && <Mark word="estimated" title="thermal figures of the motor" />}
      </p>
      <div class="chart-foot">
        <SaveChart name={name} svg={() => svg.current} table={() => windingTable(limits)} />
        <DataTable title="The winding as a table" table={() => windingTable(limits)} />
      </div>
    </>
  );
}
