import { useId } from "preact/hooks";
import { counted } from "../../../ui/count.ts";
import { ENCODINGS, type Encoding } from "./encoding.ts";
import { EXAMPLES } from "./examples.ts";
import type { CsvLine } from "./lines.ts";
import type { ImportModel } from "./model.ts";
import { Part } from "./Part.tsx";
import { DELIMITERS } from "./sniff.ts";
import { takeAs, takeIn } from "./takeIn.ts";

const DELIMITER_NAMES: Readonly<Record<string, string>> = {
  ",": "comma",
  ";": "semicolon",
  "\t": "tabulator",
  "|": "bar",
};

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
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              if (file) void takeIn(model, { name: file.name, text: null, file });
            }}
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
            value={model.source.value?.name === "" ? (model.source.value.text ?? "") : ""}
            onInput={(event) => void takeIn(model, { name: "", text: event.currentTarget.value })}
          />
        </div>
      </div>
      <Part what="Reading the file" part={model.part.value} onStop={() => model.reading.value?.abort()} />
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
  const { source, table } = model;
  if (!source.value || !table.value) return null;
  const from = source.value;
  const { openQuote } = table.value;
  return (
    <p class="bench-spelling">
      {from.name !== "" && <strong>{from.name}</strong>} {counted(table.value.lines.length, "line")}, cells
      apart by{" "}
      <select
        aria-label="What stands between the cells"
        value={table.value.delimiter}
        onChange={(event) => takeAs(model, { delimiter: event.currentTarget.value })}
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
        onChange={(event) => takeAs(model, { decimal: event.currentTarget.value === "," ? "," : "." })}
      >
        <option value=".">point</option>
        <option value=",">comma</option>
      </select>
      <EncodingPicker model={model} />, <HeaderPicker model={model} />
      {openQuote !== null && (
        <span class="quiet"> A quote in line {openQuote} is never closed: quotes are read as text.</span>
      )}
    </p>
  );
}

/** How a file's bytes are read as letters: found by itself, can be said. */
function EncodingPicker({ model }: { readonly model: ImportModel }) {
  const encoding = model.read.value?.encoding;
  if (!encoding) return null;
  return (
    <>
      , letters by{" "}
      <select
        aria-label="The encoding"
        value={encoding}
        onChange={(event) => takeAs(model, { encoding: event.currentTarget.value as Encoding })}
      >
        {Object.entries(ENCODINGS).map(([value, label]) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </>
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
  const { table } = model;
  if (!table.value) return null;
  const { headerLine, top } = table.value;
  const above = top.filter(({ line }) => headerLine !== null && line < headerLine).length;
  return (
    <label>
      header in{" "}
      <select
        aria-label="The line with the columns' names"
        value={String(headerLine ?? 0)}
        onChange={(event) => takeAs(model, { header: Number(event.currentTarget.value) })}
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
