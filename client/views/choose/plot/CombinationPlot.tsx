import { useMemo } from "preact/hooks";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import type { Column, Combination, PointsAnswer } from "../answers.ts";
import { type ColumnSpec, valueText } from "../columns.ts";
import { useCombinationWords } from "./combinationWords.ts";
import { isAdmissible } from "./front.ts";
import { pictureOf, pictureSentence, pictureTable, thinnedText } from "./picture.ts";
import { choosePlot } from "./plot.ts";

export interface CombinationPlotProps {
  readonly job: string;
  /** of the columns that it names, which may be those asked for before */
  readonly answer: PointsAnswer;
  readonly drawn: { readonly x: Column; readonly y: Column };
  readonly target: number;
  readonly looked: Combination | null;
  readonly pinned: readonly Combination[];
  readonly describe: (combination: Combination) => readonly string[];
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
}

/** @returns height of the plot at a width [px] */
const plotHeight = (width: number) => Math.round(Math.min(440, Math.max(300, width * 0.6)));

/** Any two columns of the combinations against each other. */
export function CombinationPlot(props: CombinationPlotProps) {
  const { answer, drawn, target, looked, pinned, describe } = props;
  const words = useCombinationWords(props.job);
  const picture = useMemo(() => pictureOf({ answer, ...drawn, target }), [answer, drawn.x, drawn.y, target]);
  const plot = useMemo(() => {
    const marked = ({ index, values }: Combination) => ({ index, x: values[drawn.x], y: values[drawn.y] });
    return choosePlot(picture, { pinned: pinned.map(marked), looked: looked && marked(looked) });
  }, [picture, looked?.index, pinned.map(({ index }) => index).join(",")]);
  const brief = (index: string): readonly string[] => {
    const point = answer.points.find(([each]) => String(each) === index);
    if (!point) return [];
    const [, x, y] = point;
    return [
      `${valueText(drawn.y, y)}, ${valueText(drawn.x, x)}: ${isAdmissible(point) ? "works" : "does not"}`,
    ];
  };
  const thinned = thinnedText(picture);
  return (
    <PlotChart
      plot={plot}
      sentence={pictureSentence(picture)}
      height={plotHeight}
      name={`choose ${drawn.y} ${drawn.x}`}
      table={() => pictureTable(picture)}
      reading={{
        label: "Combinations; P pins one",
        describe: (index) => {
          const combination = words.found(index);
          return combination ? describe(combination) : brief(index);
        },
        chosen: looked && String(looked.index),
        onChoose: (index) => props.onLook(Number(index)),
        onRead: words.read,
        keys: { p: (index) => props.onPin(Number(index)) },
      }}
    >
      {thinned && <p class="quiet small">{thinned}</p>}
    </PlotChart>
  );
}

export interface AxisPickerProps {
  readonly label: string;
  /** of the search */
  readonly columns: readonly ColumnSpec[];
  readonly value: Column;
  readonly onChange: (column: Column) => void;
}

/** Which column stands along an axis. */
export function AxisPicker({ label, columns, value, onChange }: AxisPickerProps) {
  return (
    <label>
      <span class="quiet">{label}</span>{" "}
      <select value={value} onChange={(event) => onChange(columns[event.currentTarget.selectedIndex].key)}>
        {columns.map((column) => (
          <option key={column.key} value={column.key}>
            {column.label}
          </option>
        ))}
      </select>
    </label>
  );
}
