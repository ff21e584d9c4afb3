import { batch } from "@preact/signals";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { FieldTexts } from "../record/spec.ts";
import { type CsvChoices, CsvError, type CsvTable, tableIn } from "./csv.ts";
import { withGuessedAdjustments } from "./guessAdjust.ts";
import { layoutOf } from "./layouts.ts";
import { type ColumnMapping, guessMapping } from "./mapping.ts";
import { blank, type ImportModel } from "./model.ts";
import { OPEN } from "./roles.ts";
import { type ReadSource, readFile, readText, type Source } from "./source.ts";
import { type FileHead, headOf } from "./tests.ts";

/** A meter has read the flow unless the file counts open holes. */
function withFlowFrom(fields: FieldTexts, mapping: readonly ColumnMapping[]): FieldTexts {
  if (!("flowFrom" in fields) || fields.flowFrom) return fields;
  const plate = mapping.some(({ role }) => role === OPEN || role === "platePressure");
  return { ...fields, flowFrom: plate ? "bleed-plate" : "known-flow" };
}

/** The fields above the rows as the file's own head lines say them; an exported file says all of them. */
function fieldsFrom(before: FieldTexts, source: Source, head: FileHead): FieldTexts {
  if (head.kind !== null) return { ...blank(before), title: "", ...head.fields };
  const title = head.fields.title ?? (before.title || source.name.replace(/\.[^.]*$/, ""));
  return { ...before, ...head.fields, title };
}

/** The table in what was read, or in words why there is none. */
function tableOf(
  read: ReadSource,
  choices: CsvChoices,
): { readonly table: CsvTable | null; readonly message: string | null } {
  try {
    return { table: tableIn(read.lines, choices), message: null };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { table: null, message: error.message };
  }
}

/** Sets how the columns are read: as in the last file of this layout, else as their headers and readings say. */
export function guessColumns(model: ImportModel, table: CsvTable, usesLayout = true): void {
  const layout = usesLayout ? layoutOf(model.kind, table.header) : null;
  const guessed = () => withGuessedAdjustments(table, guessMapping(table.header, model.kind), model.kind);
  batch(() => {
    model.mapping.value = layout?.mapping ?? guessed();
    model.only.value = layout?.only ?? [];
    model.splitBy.value = layout?.splitBy ?? null;
    model.every.value = 1;
    model.leavesOut.value = false;
    model.remembered.value = layout !== null;
  });
}

/** Takes over what a file's own head lines say of the test. */
function takeHead(model: ImportModel, source: Source, table: CsvTable): void {
  const head = headOf(table.head, model.kind, model.parts);
  const draft = model.form.draft.value;
  const fields = withFlowFrom(fieldsFrom(draft.fields, source, head), model.mapping.value);
  const holes = head.kind === null && head.holes.length === 0 ? draft.holes : head.holes;
  model.form.draft.value = { ...draft, fields, holes };
}

/** Finds the table in what was read. */
function place(model: ImportModel, source: Source, choices: CsvChoices, read: ReadSource): void {
  const { table, message } = tableOf(read, choices);
  const before = model.table.value;
  const isSame =
    model.source.value === source && before !== null && before.header.join("\n") === table?.header.join("\n");
  batch(() => {
    model.source.value = source;
    model.read.value = read;
    model.choices.value = choices;
    model.message.value = message;
    model.saved.value = new Set();
    model.refused.value = new Map();
    model.table.value = table;
    if (!table) return;
    if (!isSame) guessColumns(model, table);
    takeHead(model, source, table);
  });
}

/** Reads a file bit by bit; the last one asked for counts. */
async function readIn(model: ImportModel, source: Source, file: Blob, choices: CsvChoices) {
  const stopped = new AbortController();
  model.reading.value = stopped;
  model.part.value = 0;
  model.message.value = null;
  const onPart = (part: number) => {
    if (model.reading.value === stopped) model.part.value = part;
  };
  try {
    place(
      model,
      source,
      choices,
      await readFile(source.name, file, choices, { signal: stopped.signal, onPart }),
    );
  } catch (error) {
    if (error instanceof CsvError) {
      model.message.value = error.message;
      model.table.value = null;
    } else if (!stopped.signal.aborted) throw error;
  } finally {
    if (model.reading.value === stopped) {
      model.reading.value = null;
      model.part.value = null;
    }
  }
}

/**
 * Takes a text or a file in: finds its table, guesses its columns, and takes over what its own head lines say of the test.
 *
 * @returns when a file is read; a text is when it returns
 */
export function takeIn(model: ImportModel, source: Source, choices: CsvChoices = {}): Promise<void> {
  model.reading.value?.abort();
  if (source.text === null && source.file) return readIn(model, source, source.file, choices);
  place(model, source, choices, readText(source.text ?? "", choices));
  return Promise.resolve();
}

/** Takes the same text or file as another delimiter, encoding, header or decimal sign makes it. */
export function takeAs(model: ImportModel, change: CsvChoices): void {
  const [source, read] = [model.source.value, model.read.value];
  if (!source || !read) return;
  const choices = { ...model.choices.value, ...change };
  const isOtherText = "delimiter" in change || "encoding" in change;
  if (isOtherText) void takeIn(model, source, choices);
  else place(model, source, choices, read);
}

/** @returns the kind of test that the text says it is, where that is another one than is being imported; null where not */
export function otherKind({ kind, table }: ImportModel): TestKind | null {
  const said = table.value ? headOf(table.value.head, kind).kind : null;
  return said === kind ? null : said;
}
