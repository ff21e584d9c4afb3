import type { Book } from "../../../shared/book/book.ts";
import type { Stored } from "../../../shared/model/record.ts";
import { withdrawnOf } from "../../../shared/model/withdrawn.ts";
import { withPoint } from "../../../shared/units/decimalMark.ts";
import { unitOf as unitShown } from "../../../shared/units/showing.ts";
import type { Table } from "../../ui/table.ts";
import { type Named, namesOf, textFor } from "./changes.ts";
import { draftOf, type FormState } from "./draft.ts";
import type { FormSpec } from "./spec.ts";

/** The one unit in which a column's numbers stand; null where they have none. */
function unitOf({ spec }: Named): string | null {
  return spec?.kind === "quantity" ? unitShown(spec.dimension) : null;
}

function withoutUnit(text: string, unit: string | null): string {
  return unit !== null && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;
}

/** A list of parts or builds as a table: each field of their form a column, its unit beside its name. */
export function partsTable(
  form: FormSpec,
  records: readonly Stored<Readonly<Record<string, unknown>>>[],
  book: Book | null,
): Table {
  const states: FormState[] = records.map(({ data }) => draftOf(form, data, withPoint));
  const paths = [...new Set(states.flatMap(({ rows }) => Object.keys(rows)))];
  const most = Object.fromEntries(
    paths.map((path) => [path, Math.max(...states.map(({ rows }) => rows[path] ?? 0))]),
  );
  const used = namesOf(form, most).filter(({ path }) => states.some(({ values }) => values[path]));
  const header = used.map((named) => {
    const unit = unitOf(named);
    return unit === null ? named.label : `${named.label} [${unit}]`;
  });
  return {
    columns: [...header, "Retired because"],
    rows: records.map(({ data }, i) => [
      ...used.map((named) => withoutUnit(textFor(named, states[i].values, book), unitOf(named))),
      withdrawnOf(data) ?? "",
    ]),
  };
}
