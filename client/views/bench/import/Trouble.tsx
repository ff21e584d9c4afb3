import { inWords } from "../../../ui/count.ts";
import type { Cause } from "./causes.ts";
import type { CsvTable } from "./csv.ts";
import { adviceOn, type Change, curesOf } from "./cures.ts";
import type { ImportModel } from "./model.ts";
import { takeAs } from "./takeIn.ts";

interface TroubleProps {
  readonly model: ImportModel;
  readonly table: CsvTable;
}

/** So many things that are wrong are said at once. */
const SAID = 3;

function apply(model: ImportModel, change: Change): void {
  if (change.what === "decimal") takeAs(model, { decimal: change.decimal });
  else if (change.what === "only") model.only.value = [...model.only.value, change.condition];
  else
    model.mapping.value = model.mapping.value.map((column, i) => (i === change.at ? change.column : column));
}

/** What skipped lines have in common and what would cure it, before anything else where most are skipped. */
export function Trouble({ model, table }: TroubleProps) {
  const { causes, skipped, read } = model.points.value;
  if (skipped === 0) return null;
  const isMost = skipped > read;
  return (
    <section class={isMost ? "bench-trouble bench-trouble-most" : "bench-trouble"}>
      <h2>{isMost ? `Most lines are skipped: ${skipped} of ${skipped + read}` : "Skipped lines"}</h2>
      <ul>
        {causes.slice(0, SAID).map((cause) => (
          <CauseLine key={cause.common} model={model} table={table} cause={cause} />
        ))}
      </ul>
      {causes.length > SAID && (
        <p class="quiet">{inWords(causes.length - SAID)} more kinds of trouble stand in the preview.</p>
      )}
    </section>
  );
}

function CauseLine({ model, table, cause }: TroubleProps & { readonly cause: Cause }) {
  const { count, common, line } = cause;
  const cures = curesOf(cause, model.mapping.value, table);
  const advice = adviceOn(cause);
  return (
    <li>
      <p>
        In {count === 1 ? "one line" : `${count} lines`} {common}; {count === 1 ? "it is" : "the first is"}{" "}
        line {line.line}. {advice}
      </p>
      <p class="bench-buttons">
        {cures.map(({ label, change }) => (
          <button key={label} type="button" onClick={() => apply(model, change)}>
            {label}
          </button>
        ))}
      </p>
    </li>
  );
}
