import { PlotChart } from "../../../charts/PlotChart.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import { Subscripts } from "../../../ui/Subscripts.tsx";
import { useSaid } from "../../../ui/useSaid.ts";
import type { Running } from "./result.ts";
import type { Sketch } from "./sketch.ts";

interface RunningPanelProps {
  readonly running: Running;
  /** of a row: "point" */
  readonly row: string;
  /** the figures stand elsewhere */
  readonly bare?: boolean;
  /** a drawn reading was chosen: its row's key */
  readonly onChoose?: (key: number) => void;
}

/** The figures so far. */
export function RunningFigures({ running }: { readonly running: Running }) {
  if (running.figures.length === 0) return null;
  return (
    <dl class="bench-figures">
      {running.figures.map((figure) => (
        <div key={figure.label}>
          <dt>
            <Subscripts text={figure.label} />
          </dt>
          <dd>
            {figure.text} {figure.mark && <Mark word={figure.mark} />}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** What the readings so far say, beside the form. */
export function RunningPanel({ running, row, bare = false, onChoose }: RunningPanelProps) {
  useSaid(running.next ? `Next: ${running.next}` : null);
  return (
    <section class="bench-running" aria-label="Result so far">
      <h2>So far</h2>
      {!bare && <RunningFigures running={running} />}
      {running.sketch && <SketchChart sketch={running.sketch} row={row} onChoose={onChoose} />}
      {running.next && (
        <p class="bench-next">
          <span class="quiet">Next:</span> {running.next}
        </p>
      )}
      {running.notes.map((note) => (
        <p key={note} class="quiet small">
          {note}
        </p>
      ))}
    </section>
  );
}

const [PLAIN, STRIP, AXES] = [210, 20, 76];

/** Low, so that it stands beside the rows; a strip for each row where they are named. */
const heightOf = ({ plot }: Sketch) => (plot.strips ? AXES + STRIP * plot.strips.length : PLAIN);

interface SketchChartProps extends Pick<RunningPanelProps, "row" | "onChoose"> {
  readonly sketch: Sketch;
}

/** The readings as they are typed; a wrong row stands apart. */
function SketchChart({ sketch, row, onChoose }: SketchChartProps) {
  return (
    <>
      <h3 class="bench-sketch">{sketch.title}</h3>
      <PlotChart
        name={`readings ${row}`}
        sentence={`${sketch.title}: the readings so far.`}
        plot={sketch.plot}
        height={() => heightOf(sketch)}
        tableTitle="The readings as a table"
        table={sketch.table}
        reading={{
          label: "Readings",
          describe: sketch.describe,
          onChoose: onChoose && ((key) => onChoose(Number(key))),
        }}
      />
    </>
  );
}
