import { csvFormatRows } from "d3";
import { inlined, type NamedParts } from "../../../../shared/book/named.ts";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import { withPoint } from "../../../../shared/units/decimalMark.ts";
import { guarded } from "../../../ui/table.ts";
import type { Draft } from "../record/draft.ts";
import { columnsOf, fieldsOf, hasPlate, KINDS } from "../record/kinds.ts";
import type { ColumnSpec } from "../record/spec.ts";
import { unitsOf, writeDraft } from "../record/writeDraft.ts";

/** A head line's text: as it is, or as a JSON string where it runs over several lines or could be mistaken for one. */
function headLine(path: string, text: string): string {
  const plain = !/[\r\n]/.test(text) && !/^\s|\s$|^"|"$|[,;\t]$/.test(text);
  const line = `# ${path} = ${plain ? text : JSON.stringify(text)}`;
  // Behind a delimiter the text would be a cell of its own, and could begin as a formula does.
  return /[,;\t]/.test(line) ? `"${line.replaceAll('"', '""')}"` : line;
}

/** A reading, with its unit or without: "-3.2", "-5 mm". */
const READING = /^[+-]?[\d.,]+(e[+-]?\d+)?( ?[\p{L}%°·/²³⁻¹]+[\p{L}\d%°·/²³⁻¹]*)?$/iu;

/** Readings stay numbers to a spreadsheet; whatever else could begin a formula is kept from it. */
const safe = (text: string): string => (READING.test(text) ? text : guarded(text));

function headLines(draft: Draft): string[] {
  const spec = KINDS[draft.kind];
  const fields = fieldsOf(spec).flatMap(({ key }) =>
    draft.fields[key] ? [headLine(key, draft.fields[key])] : [],
  );
  const holes = draft.holes.flatMap(({ key: _, ...hole }, i) =>
    Object.entries(hole).flatMap(([key, text]) => (text ? [headLine(`plate.holes.${i}.${key}`, text)] : [])),
  );
  return [headLine("kind", draft.kind), ...fields, ...holes];
}

/** @returns the one unit of a column's cells; null where they have several, or none */
function commonUnit(cells: readonly string[], unit: string | undefined): string | null {
  if (unit === undefined) return null;
  return cells.every((cell) => cell === "" || cell.endsWith(` ${unit}`)) ? unit : null;
}

/** What a test names of the book goes out by its name and as it is described, so that another book can read it as well. */
function draftOf(test: BenchTest, parts: NamedParts): Draft {
  const described = writeDraft(inlined(parts, test), undefined, withPoint);
  const named = Object.entries(writeDraft(test, parts, withPoint).fields).filter(([, text]) => text !== "");
  return { ...described, fields: { ...described.fields, ...Object.fromEntries(named) } };
}

interface ExportOptions {
  /** what stands above the rows goes out as "# key = text" lines before them, so that the whole test comes back */
  readonly setUp?: boolean;
  /** the plates and instruments that the test may name */
  readonly parts?: NamedParts;
}

const NO_PARTS: NamedParts = { instruments: [], plates: [] };

/** A column's name in words; what a list of columns adds in brackets would be read as a unit. */
const nameOf = ({ label, inList = "" }: ColumnSpec): string =>
  inList !== "" && !inList.includes("(") ? capitalised(inList) : label;

const capitalised = (text: string): string => text[0].toUpperCase() + text.slice(1);

interface ExportedColumn {
  readonly header: string;
  readonly cells: readonly string[];
}

function columnsOfTest(test: BenchTest, draft: Draft): ExportedColumn[] {
  const spec = KINDS[draft.kind];
  const units = unitsOf(test);
  const columns = columnsOf(spec, draft.fields).map((column) => {
    const cells = draft.rows.map((row) => row.cells[column.key] ?? "");
    const unit = commonUnit(cells, units[column.key]);
    const bare = unit === null ? cells : cells.map((cell) => cell.slice(0, -unit.length).trim());
    return { header: unit === null ? nameOf(column) : `${nameOf(column)} [${unit}]`, cells: bare };
  });
  const open = hasPlate(spec, draft.fields)
    ? draft.holes.map((_, i) => ({ header: `Open ${i + 1}`, cells: draft.rows.map((row) => row.open[i]) }))
    : [];
  const aside = { header: "Set aside", cells: draft.rows.map((row) => row.aside ?? "") };
  const isFilled = ({ cells }: ExportedColumn) => cells.some((cell) => cell !== "");
  return [...columns.filter(isFilled), ...open, ...[aside].filter(isFilled)];
}

/** A test as CSV: one line a row, readings as typed, names in words with their units; with its set-up above where that is asked for. */
export function exportCsv(test: BenchTest, { setUp = false, parts = NO_PARTS }: ExportOptions = {}): string {
  const draft = draftOf(test, parts);
  const columns = columnsOfTest(test, draft);
  const rows = draft.rows.map((_, i) => columns.map(({ cells }) => safe(cells[i])));
  const table = csvFormatRows([columns.map(({ header }) => header), ...rows]).replaceAll("\n", "\r\n");
  const head = setUp ? `${headLines(draft).join("\r\n")}\r\n` : "";
  return `${head}${table}\r\n`;
}

/** @returns a file name that tells the test apart */
export function csvName(test: BenchTest): string {
  const words = [test.date, KINDS[test.kind].name, test.title].filter(Boolean).join(" ");
  return `${words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}-]+/gu, "-")
    .replace(/-+$/, "")}.csv`;
}
