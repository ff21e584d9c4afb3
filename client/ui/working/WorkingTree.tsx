import { useState } from "preact/hooks";
import {
  type Board,
  type Origin,
  originBehind,
  type Working,
  type WorkingValue,
  workingBehind,
} from "../../../shared/physics/working.ts";
import { Later } from "../Later.tsx";
import { Equation } from "./Equation.tsx";
import { Source } from "./Source.tsx";
import { resultText, shownInWorking } from "./workingText.ts";

const readings = () => import("./Readings.tsx");

interface Props {
  readonly working: Working;
  readonly board: Board;
}

/** A symbol with what stands below it: "N_p". */
function Sign({ text }: { readonly text: string }) {
  const [base, below] = text.split("_");
  return (
    <span class="working-symbol">
      {base}
      {below && <sub>{below}</sub>}
    </span>
  );
}

function Line({ value }: { readonly value: WorkingValue }) {
  return (
    <>
      <Sign text={value.symbol} /> = {shownInWorking(value)} <span class="quiet">{value.meaning}</span>
    </>
  );
}

/** A number put in; what stands behind it opens: the working that gives it, or the tests it comes from. */
function Value({ value, working, board }: Props & { readonly value: WorkingValue }) {
  const [open, setOpen] = useState(false);
  const given = workingBehind(value, board.workings);
  const deeper = given === working ? null : given;
  const origin = deeper ? null : originBehind(value, board.origins);
  if (!deeper && !origin) return <Line value={value} />;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <Line value={value} />
      </summary>
      {open && deeper && <WorkingTree working={deeper} board={board} />}
      {open && origin && <FromOrigin origin={origin} />}
    </details>
  );
}

function FromOrigin({ origin: { what, tests } }: { readonly origin: Origin }) {
  return (
    <div class="working-origin">
      <p>{what}</p>
      {tests.length > 0 && <Later load={readings} what="The readings" props={{ tests }} atOnce />}
    </div>
  );
}

/** How a figure came about: equation, the numbers put into it, each down to what it comes from, and the source. */
export function WorkingTree({ working, board }: Props) {
  const { equation, values, result, source, assumptions } = working;
  return (
    <div class="working">
      <Equation text={equation} />
      <ul class="working-values">
        {values.map((value) => (
          <li key={value.symbol + value.meaning}>
            <Value value={value} working={working} board={board} />
          </li>
        ))}
      </ul>
      <p>
        <Sign text={result.symbol} /> = <span class="figure">{resultText(working)}</span>
      </p>
      {assumptions.length > 0 && <p class="small">Taken for granted: {assumptions.join(" ")}</p>}
      <p class="quiet small">
        Source: <Source text={source} />
      </p>
    </div>
  );
}
