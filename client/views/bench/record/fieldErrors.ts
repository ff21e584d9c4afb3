import type { FieldError } from "../../../../shared/model/api/errors.ts";
import type { Draft } from "./draft.ts";
import { fieldsOf, KINDS } from "./kinds.ts";
import type { Messages } from "./readDraft.ts";

/** Which of the draft's rows and holes the server's indices mean. */
export interface SentKeys {
  readonly rowKeys: readonly number[];
  readonly holeKeys: readonly number[];
}

/** One line of the summary above the form. */
export interface SummaryLine {
  readonly path: string;
  /** "Point 3, pressure" */
  readonly label: string;
  readonly message: string;
}

/** The server speaks of a quantity's number or unit, of a count in a list; the form has one field for all of it. */
function fieldOf(path: readonly string[]): string[] {
  const last = path.at(-1);
  const bare = last === "value" || last === "unit" ? path.slice(0, -1) : path;
  const open = bare.indexOf("open");
  return [...(open >= 0 ? bare.slice(0, open + 1) : bare)];
}

function keyed(path: readonly string[], { rowKeys, holeKeys }: SentKeys): string[] {
  const place = path[0] === "rows" ? 1 : path[0] === "plate" && path[1] === "holes" ? 2 : -1;
  if (place < 0 || path[place] === undefined) return [...path];
  const key = (place === 1 ? rowKeys : holeKeys)[Number(path[place])];
  return path.map((part, i) => (i === place && key !== undefined ? String(key) : part));
}

/**
 * The server's refusals by the form's own paths.
 *
 * @param fields - dotted paths with the indices of what was sent, "rows.3.pressure.unit"
 * @param sent - the draft's keys of the rows and holes that were sent
 */
export function formErrors(fields: readonly FieldError[], sent: SentKeys): Messages {
  const errors = new Map<string, string>();
  for (const { path, message } of fields) {
    const own = keyed(fieldOf(path.split(".")), sent).join(".");
    const said = errors.get(own);
    errors.set(own, said === undefined || said === message ? message : `${said} ${message}`);
  }
  return errors;
}

/** @returns what a field is called in the summary */
export function labelOf(path: string, draft: Draft): string {
  const spec = KINDS[draft.kind];
  const [head, second, third, fourth] = path.split(".");
  if (head === "rows" && second !== undefined) {
    const number = draft.rows.findIndex((row) => row.key === Number(second)) + 1;
    const row = `${spec.row[0].toUpperCase()}${spec.row.slice(1)} ${number}`;
    const column = third && columnLabel(third, spec.columns);
    return column ? `${row}, ${column}` : row;
  }
  if (head === "plate" && third !== undefined) {
    const number = draft.holes.findIndex((hole) => hole.key === Number(third)) + 1;
    return `Hole ${number}, ${HOLE_LABELS[fourth] ?? fourth}`;
  }
  if (head === "rows") return `${spec.row[0].toUpperCase()}${spec.row.slice(1)}s`;
  if (head === "plate") return "Bleed plate";
  return fieldsOf(spec).find((field) => field.key === path)?.label ?? path;
}

const HOLE_LABELS: Readonly<Record<string, string>> = {
  diameter: "diameter",
  thickness: "thickness",
  count: "count",
  edge: "edge",
  dischargeCoefficient: "coefficient",
};

function columnLabel(
  key: string,
  columns: readonly { readonly key: string; readonly label: string }[],
): string {
  if (key === "open") return "open holes";
  if (key === "setAside") return "reason";
  return (columns.find((column) => column.key === key)?.label ?? key).toLowerCase();
}

/** Everything that is wrong, in words, in the order in which it was found. */
export function summaryOf(errors: Messages, draft: Draft): SummaryLine[] {
  return [...errors].map(([path, message]) => {
    // a message about a whole row names it itself
    return { path, label: labelOf(path, draft), message: message.replace(/^Row \d+: /, "") };
  });
}
