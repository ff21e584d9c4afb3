import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { settledText } from "../../../../shared/units/settled.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import type { DraftKind } from "../../../state/drafts.ts";
import { type Draft, type DraftHole, isDraftOf } from "./draft.ts";
import { fieldsOf, KINDS } from "./kinds.ts";
import { fieldNumber, HOLE_NUMBERS, type HoleNumber } from "./numbers.ts";

const HOLE_KEYS = Object.keys(HOLE_NUMBERS) as HoleNumber[];

function settledHole(hole: DraftHole): DraftHole {
  const numbers = HOLE_KEYS.map((key) => [key, settledText(HOLE_NUMBERS[key], hole[key])] as const);
  return { ...hole, ...Object.fromEntries(numbers) };
}

/** @returns a draft that says in each field, and above each column, which unit is meant where none is typed */
function settledDraft(draft: Draft): Draft {
  const spec = KINDS[draft.kind];
  const fields = fieldsOf(spec).flatMap((field) => {
    const number = fieldNumber(draft.kind, field);
    const text = draft.fields[field.key];
    return number && text !== undefined ? [[field.key, settledText(number, text)] as const] : [];
  });
  const units = spec.columns.flatMap(({ key, dimension }) =>
    dimension === null ? [] : [[key, draft.units[key] ?? unitOf(dimension)] as const],
  );
  return {
    ...draft,
    fields: { ...draft.fields, ...Object.fromEntries(fields) },
    holes: draft.holes.map(settledHole),
    units: { ...draft.units, ...Object.fromEntries(units) },
  };
}

/** @returns what is kept of a test's form */
export const draftKind = (kind: TestKind): DraftKind<Draft> => ({
  isContent: isDraftOf(kind),
  settled: settledDraft,
});
