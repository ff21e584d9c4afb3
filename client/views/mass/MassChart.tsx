import { useRef } from "preact/hooks";
import { Chart } from "../../charts/Chart.tsx";
import { DataTable } from "../../ui/DataTable.tsx";
import { SaveChart } from "../../ui/SaveChart.tsx";
import type { Table } from "../../ui/table.ts";
import { drawMass, massHeight } from "./drawMass.ts";
import type { Headroom } from "./headroom.ts";
import { groupSums, headroomSentence } from "./massWords.ts";

const GRAMS = 1000;

function massTable(of: Headroom): Table {
  const left = (limit: number | null) => (limit === null ? "any" : GRAMS * (limit - of.mass));
  return {
    columns: ["What", "Mass, g", "Allowed at the wanted margin, g", "Left, g", "Allowed at 1 ×, g"],
    rows: [
      ...groupSums(of).map(({ group, value }) => [group, GRAMS * value, null, null, null]),
      ["on board", GRAMS * of.mass, null, null, null],
      ...of.allowed.map(({ title, atTarget, atOne }) => [
        title,
        null,
        atTarget === null ? "any" : GRAMS * atTarget,
        left(atTarget),
        atOne === null ? "any" : GRAMS * atOne,
      ]),
    ],
  };
}

/** The bar of masses with its limits, its table, and ways to save it. */
export function MassChart({ of }: { readonly of: Headroom }) {
  const svg = useRef<SVGSVGElement | null>(null);
  const name = `mass ${of.outcome.build.name}`.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  return (
    <>
      <Chart
        sentence={headroomSentence(of)}
        height={() => massHeight(of)}
        svgRef={svg}
        draw={(element, size) => drawMass(element, of, size)}
      />
      {of.allowed.length > 0 && (
        <p class="quiet small">
          Solid: as heavy as it may be for the wanted margin. Dashed: as heavy as it just holds. Both by the
          model that Match uses, parked and driving, at the charge of the build.
        </p>
      )}
      <div class="chart-foot">
        <SaveChart name={name} svg={() => svg.current} table={() => massTable(of)} />
        <DataTable title="The picture as a table" table={() => massTable(of)} />
      </div>
    </>
  );
}
