import type { FormModel } from "../forms/model.ts";
import { roleOf, unitIn } from "../import/headers.ts";
import { unitLabels } from "../record/numbers.ts";
import type { ColumnSpec } from "../record/spec.ts";
import { mappingFor } from "./mappings.ts";
import type { WireColumn, WireMapping } from "./wireRows.ts";

/** What a name is, as a header of a file would be read. */
function guessed(form: FormModel, columns: readonly ColumnSpec[], name: string): WireColumn {
  const column = columns.find(({ key }) => key === roleOf(name, form.spec.kind));
  if (!column?.dimension) return { column: "", unit: "" };
  return { column: column.key, unit: unitIn(name, column.dimension) ?? unitLabels(column.dimension, "")[1] };
}

/** @returns every name with what it is: as it was set, as it was the last time, as it reads */
export function wholeMapping(
  form: FormModel,
  columns: readonly ColumnSpec[],
  names: readonly string[],
  set: WireMapping,
): WireMapping {
  const before = mappingFor(form.spec.kind, names);
  return Object.fromEntries(
    names.map((name) => [name, set[name] ?? before[name] ?? guessed(form, columns, name)]),
  );
}
