import { useMemo, useRef } from "preact/hooks";
import { Chart } from "../../../charts/Chart.tsx";
import { DataTable } from "../../../ui/DataTable.tsx";
import { SaveChart } from "../../../ui/SaveChart.tsx";
import type { ChosenSet, Column, PointsAnswer } from "../answers.ts";
import { COLUMNS, valueText } from "../columns.ts";
import { type Drawn, drawSets, plotHeight } from "./draw.ts";
import { isAdmissible } from "./front.ts";
import { pictureOf, pictureSentence, pictureTable, thinnedText } from "./picture.ts";
import { SetReader } from "./SetReader.tsx";

export interface SetPlotProps {
  readonly job: string;
  /** of the columns that it names, which may be those asked for before */
  readonly answer: PointsAnswer;
  readonly drawn: { readonly x: Column; readonly y: Column };
  readonly target: number;
  readonly looked: ChosenSet | null;
  readonly pinned: readonly ChosenSet[];
  readonly describe: (set: ChosenSet) => readonly string[];
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
}

/** Any two columns of the sets against each other. */
export function SetPlot(props: SetPlotProps) {
  const { answer, drawn, target, looked, pinned } = props;
  const svg = useRef<SVGSVGElement | null>(null);
  const last = useRef<Drawn | null>(null);
  const picture = useMemo(() => pictureOf({ answer, ...drawn, target }), [answer, drawn.x, drawn.y, target]);
  const marked = ({ index, values }: ChosenSet) => ({ index, x: values[drawn.x], y: values[drawn.y] });
  const sentence = pictureSentence(picture);
  const brief = (index: number) => {
    const point = answer.points.find(([each]) => each === index);
    if (!point) return "";
    const [, x, y] = point;
    return `${valueText(drawn.y, y)}, ${valueText(drawn.x, x)}: ${isAdmissible(point) ? "in" : "out"}`;
  };
  const thinned = thinnedText(picture);
  return (
    <figure class="choose-figure">
      <Chart
        sentence={sentence}
        height={plotHeight}
        svgRef={svg}
        draw={(element, size) => {
          const drawing = { picture, pinned: pinned.map(marked), looked: looked && marked(looked) };
          last.current = drawSets(element, size, drawing, last.current);
        }}
      >
        <SetReader
          job={props.job}
          spots={() => last.current?.spots ?? []}
          brief={brief}
          describe={props.describe}
          looked={looked?.index ?? null}
          onLook={props.onLook}
          onPin={props.onPin}
          label={sentence}
        />
      </Chart>
      <Legend />
      {thinned && <p class="quiet small">{thinned}</p>}
      <figcaption class="chart-foot">
        <SaveChart
          name={`choose-${drawn.y}-${drawn.x}`.toLowerCase()}
          svg={() => svg.current}
          table={() => pictureTable(picture)}
        />
        <DataTable title="The picture as a table" table={() => pictureTable(picture)} />
      </figcaption>
    </figure>
  );
}

const SAMPLES = [
  { name: "choose-admissible", path: "M4.5,7a2.5,2.5 0 1,0 5,0a2.5,2.5 0 1,0 -5,0", text: "does it" },
  { name: "choose-others", path: "M4.6,4.6l4.8,4.8m0,-4.8l-4.8,4.8", text: "does not" },
  {
    name: "choose-front",
    path: "M7,2.4l4.6,4.6l-4.6,4.6l-4.6,-4.6Z",
    text: "no other that does it betters it in both",
  },
  { name: "choose-pin", path: "M3,7a4,4 0 1,0 8,0a4,4 0 1,0 -8,0", text: "pinned, with its letter" },
] as const;

function Legend() {
  return (
    <ul class="choose-legend small quiet">
      {SAMPLES.map(({ name, path, text }) => (
        <li key={name}>
          <svg width="14" height="14" class="choose-sample" aria-hidden="true">
            <path class={name} d={path} />
          </svg>{" "}
          {text}
        </li>
      ))}
    </ul>
  );
}

export interface AxisPickerProps {
  readonly label: string;
  readonly value: Column;
  readonly onChange: (column: Column) => void;
}

/** Which column stands along an axis. */
export function AxisPicker({ label, value, onChange }: AxisPickerProps) {
  return (
    <label>
      <span class="quiet">{label}</span>{" "}
      <select value={value} onChange={(event) => onChange(COLUMNS[event.currentTarget.selectedIndex].key)}>
        {COLUMNS.map((column) => (
          <option key={column.key} value={column.key}>
            {column.label}
          </option>
        ))}
      </select>
    </label>
  );
}
