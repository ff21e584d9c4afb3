import { useId } from "preact/hooks";
import { counted } from "../../../ui/count.ts";
import { CsvError, type CsvLine } from "./csv.ts";
import { EXAMPLES } from "./examples.ts";
import { type ImportModel, takeIn } from "./model.ts";
import { DELIMITERS } from "./sniff.ts";
import { readFile } from "./source.ts";

const DELIMITER_NAMES: Readonly<Record<string, string>> = {
  ",": "comma",
  ";": "semicolon",
  "\t": "tabulator",
  "|": "bar",
};

async function choose(model: ImportModel, file: File | undefined): Promise<void> {
  if (!file) return;
  try {
    takeIn(model, await readFile(file));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    model.message.value = error.message;
    model.table.value = null;
  }
}

/** Where the table comes from: a file or pasted text; how it is delimited is found, and can be changed. */
export function SourcePicker({ model }: { readonly model: ImportModel }) {
  const id = useId();
  const table = model.table.value;
  const message = model.message.value;
  return (
    <section class="bench-source">
      <div class="bench-fields">
        <div class="field">
          <label class="field-label" for={`${id}-file`}>
            A file
          </label>
          <input
            id={`${id}-file`}
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            onChange={(event) => void choose(model, event.currentTarget.files?.[0])}
          />
        </div>
        <div class="field bench-paste">
          <label class="field-label" for={`${id}-text`}>
            or pasted text
          </label>
          <textarea
            id={`${id}-text`}
            rows={table ? 2 : 6}
            spellcheck={false}
            aria-invalid={message ? "true" : undefined}
            aria-describedby={message ? `${id}-message` : undefined}
            placeholder={EXAMPLES[model.kind]}
            value={model.source.value?.name === "" ? model.source.value.text : ""}
            onInput={(event) => takeIn(model, { name: "", text: event.currentTarget.value })}
          />
        </div>
      </div>
      {message && (
        <p class="field-error" id={`${id}-message`} role="alert">
          {message}
        </p>
      )}
      {table && <Spelling model={model} />}
    </section>
  );
}

function Spelling({ model }: { readonly model: ImportModel }) {
  const { source, table, choices } = model;
  if (!source.value || !table.value) return null;
  const from = source.value;
  return (
    <p class="bench-spelling">
      {from.name !== "" && <strong>{from.name}</strong>} {counted(table.value.lines.length, "line")}, cells
      apart by{" "}
      <select
        aria-label="What stands between the cells"
        value={table.value.delimiter}
        onChange={(event) => takeIn(model, from, { ...choices.value, delimiter: event.currentTarget.value })}
      >
        {DELIMITERS.map((delimiter) => (
          <option key={delimiter} value={delimiter}>
            {DELIMITER_NAMES[delimiter]}
          </option>
        ))}
      </select>
      , decimals by{" "}
      <select
        aria-label="The decimal sign"
        value={table.value.decimal}
        onChange={(event) =>
          takeIn(model, from, { ...choices.value, decimal: event.currentTarget.value === "," ? "," : "." })
        }
      >
        <option value=".">point</option>
        <option value=",">comma</option>
      </select>
      , <HeaderPicker model={model} />
    </p>
  );
}

/** So much of a line stands in the list of lines that may be the header [characters]. */
const SHOWN = 48;

function lineText({ line, cells }: CsvLine): string {
  const text = cells.join(" · ");
  return `line ${line}: ${text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text}`;
}

/** In which line the columns' names stand: found by itself, can be said. */
function HeaderPicker({ model }: { readonly model: ImportModel }) {
  const { source, table, choices } = model;
  if (!source.value || !table.value) return null;
  const from = source.value;
  const { headerLine, top } = table.value;
  const above = top.filter(({ line }) => headerLine !== null && line < headerLine).length;
  return (
    <label>
      header in{" "}
      <select
        aria-label="The line with the columns' names"
        value={String(headerLine ?? 0)}
        onChange={(event) =>
          takeIn(model, from, { ...choices.value, header: Number(event.currentTarget.value) })
        }
      >
        {top.map((each) => (
          <option key={each.line} value={String(each.line)}>
            {lineText(each)}
          </option>
        ))}
        <option value="0">no line: the columns have no names</option>
      </select>
      {above > 0 && <span class="quiet"> {counted(above, "line")} above it not read</span>}
    </label>
  );
}
