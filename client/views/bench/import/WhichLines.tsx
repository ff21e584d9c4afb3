import type { CsvTable } from "./csv.ts";
import type { ImportModel } from "./model.ts";
import type { Condition } from "./select.ts";

interface WhichLinesProps {
  readonly model: ImportModel;
  readonly table: CsvTable;
}

const nameOf = (table: CsvTable, column: number): string => table.header[column] || `column ${column + 1}`;

/** Which lines of the file are read, how dense, and which tests they become. */
export function WhichLines({ model, table }: WhichLinesProps) {
  const set = model.only.value.length > 0 || model.splitBy.value !== null || model.every.value > 1;
  return (
    <details class="bench-fold" open={set || undefined}>
      <summary>
        <span class="bench-fold-title">Which lines</span> all of them, unless you say which; several runs
        become several tests
      </summary>
      {model.only.value.map((condition, i) => (
        <ConditionLine key={i} model={model} table={table} condition={condition} at={i} />
      ))}
      <p>
        <button
          type="button"
          onClick={() => {
            model.only.value = [...model.only.value, { column: 0, text: "" }];
          }}
        >
          Only lines where…
        </button>
      </p>
      <SplitBy model={model} table={table} />
      <Every model={model} />
    </details>
  );
}

interface ConditionProps extends WhichLinesProps {
  readonly condition: Condition;
  readonly at: number;
}

function ConditionLine({ model, table, condition, at }: ConditionProps) {
  const put = (change: Partial<Condition>) => {
    model.only.value = model.only.value.map((each, i) => (i === at ? { ...each, ...change } : each));
  };
  return (
    <p class="bench-condition">
      Only lines where{" "}
      <select
        aria-label={`Column of condition ${at + 1}`}
        value={String(condition.column)}
        onChange={(event) => put({ column: Number(event.currentTarget.value) })}
      >
        {table.header.map((_, i) => (
          <option key={i} value={String(i)}>
            {nameOf(table, i)}
          </option>
        ))}
      </select>{" "}
      is{" "}
      <input
        type="text"
        aria-label={`Condition ${at + 1}`}
        placeholder="24000, 10 to 20, > 10.4, not empty"
        value={condition.text}
        onInput={(event) => put({ text: event.currentTarget.value })}
      />{" "}
      <button
        type="button"
        class="plain"
        onClick={() => {
          model.only.value = model.only.value.filter((_, i) => i !== at);
        }}
      >
        take out<span class="visually-hidden"> condition {at + 1}</span>
      </button>
    </p>
  );
}

function SplitBy({ model, table }: WhichLinesProps) {
  return (
    <p>
      <label>
        One test for each value of{" "}
        <select
          value={String(model.splitBy.value ?? "")}
          onChange={(event) => {
            const { value } = event.currentTarget;
            model.splitBy.value = value === "" ? null : Number(value);
          }}
        >
          <option value="">no column</option>
          {table.header.map((_, i) => (
            <option key={i} value={String(i)}>
              {nameOf(table, i)}
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}

function Every({ model }: { readonly model: ImportModel }) {
  return (
    <p>
      <label>
        Keep one line in{" "}
        <input
          type="number"
          class="bench-adjust"
          min={1}
          step={1}
          value={model.every.value}
          onInput={(event) => {
            const typed = event.currentTarget.valueAsNumber;
            if (Number.isInteger(typed) && typed >= 1) model.every.value = typed;
          }}
        />
      </label>
    </p>
  );
}
