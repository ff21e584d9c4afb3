import { inlined, type NamedParts } from "../../../../shared/book/named.ts";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import { asRead, type Spelling } from "../../../../shared/units/decimalMark.ts";
import type { TypedQuantity } from "../../../../shared/units/quantity.ts";
import type { Draft, DraftHole, DraftRow } from "./draft.ts";
import { columnsOf, fieldsOf, KINDS } from "./kinds.ts";
import { quantityText } from "./numbers.ts";

type Json = Readonly<Record<string, unknown>>;

function isQuantity(value: unknown): value is TypedQuantity {
  return typeof value === "object" && value !== null && "value" in value && "unit" in value;
}

/** @returns a stored value as the text that would have been typed for it */
function textOf(value: unknown, spell: Spelling): string {
  if (value === undefined || value === null) return "";
  if (isQuantity(value)) return quantityText(value, spell);
  if (typeof value === "number") return spell(String(value));
  if (typeof value === "boolean") return value ? "yes" : "";
  if (typeof value === "object") return "";
  return String(value);
}

function at(data: unknown, path: string): unknown {
  return path.split(".").reduce<unknown>((value, key) => (value as Json | undefined)?.[key], data);
}

const NO_PARTS: NamedParts = { instruments: [], plates: [] };

/**
 * A stored test as a draft; {@link readDraft} gives the same test back.
 *
 * @param parts - where the holes of a plate that it names are found
 * @param spell - with the reader's decimal mark unless given
 */
export function writeDraft(test: BenchTest, parts: NamedParts = NO_PARTS, spell: Spelling = asRead): Draft {
  const spec = KINDS[test.kind];
  const fields = Object.fromEntries(fieldsOf(spec).map(({ key }) => [key, textOf(at(test, key), spell)]));
  const columns = columnsOf(spec, fields).map(({ key }) => key);
  const described = inlined(parts, test);
  const plate = "plate" in described ? described.plate : undefined;
  const rows = (test.rows as readonly Json[]).map((row, key): DraftRow => {
    const open = Array.isArray(row.open) ? row.open.map(String) : [];
    return {
      key,
      cells: Object.fromEntries(columns.map((column) => [column, textOf(row[column], spell)])),
      open: plate?.holes.map((_, i) => open[i] ?? "") ?? [],
      aside: typeof row.setAside === "string" ? row.setAside : null,
    };
  });
  return {
    kind: test.kind,
    fields,
    holes: plate?.holes.map((hole, key) => holeOf(hole, key, spell)) ?? [],
    rows,
    units: unitsOf(test),
  };
}

/** @returns one kind of hole as it would have been typed */
export function holeOf(hole: object, key: number, spell: Spelling = asRead): DraftHole {
  const { diameter, thickness, count, edge, dischargeCoefficient } = hole as Json;
  return {
    key,
    diameter: textOf(diameter, spell),
    thickness: textOf(thickness, spell),
    count: textOf(count, spell),
    edge: textOf(edge, spell) || "sharp",
    dischargeCoefficient: textOf(dischargeCoefficient, spell),
  };
}

/** @returns by column, the unit of most of its readings; the first of those that are as many */
export function unitsOf(test: BenchTest): Record<string, string> {
  const counts = new Map<string, Map<string, number>>();
  for (const row of test.rows as readonly Json[]) {
    for (const [column, value] of Object.entries(row)) {
      if (!isQuantity(value)) continue;
      const ofColumn = counts.get(column) ?? new Map<string, number>();
      counts.set(column, ofColumn.set(value.unit, (ofColumn.get(value.unit) ?? 0) + 1));
    }
  }
  const usual = (units: ReadonlyMap<string, number>) =>
    [...units].reduce((most, unit) => (unit[1] > most[1] ? unit : most))[0];
  return Object.fromEntries([...counts].map(([column, units]) => [column, usual(units)]));
}
