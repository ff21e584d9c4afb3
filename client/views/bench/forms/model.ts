import { computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import type { NumberSpec } from "../../../../shared/units/readNumber.ts";
import { settledText } from "../../../../shared/units/settled.ts";
import { unitOf as unitShown } from "../../../../shared/units/showing.ts";
import { forgetDraft, type Kept, keepDraft } from "../../../state/drafts.ts";
import type { Saving } from "../../../state/saveRecord.ts";
import type { Waiting } from "../../../state/waiting/list.ts";
import type { Question } from "../../../ui/AskBeforeSaving.tsx";
import { type Draft, withCell, withField, withHole, withNewRow } from "../record/draft.ts";
import { KINDS } from "../record/kinds.ts";
import { HOLE_NUMBERS, type HoleNumber } from "../record/numbers.ts";
import { carriedOf, type Messages, type ReadDraft, readDraft } from "../record/readDraft.ts";
import type { KindSpec } from "../record/spec.ts";

/** A form: what is typed, what is wrong with it, and which of that is said yet. */
export interface FormModel {
  readonly spec: KindSpec;
  /** tells this form from another of the same test */
  readonly id: number;
  /** under which what is typed is kept; null where it is not */
  readonly address: string | null;
  /** what was typed before and not saved, with which it began; null where it began anew */
  readonly kept: Kept<Draft> | null;
  readonly draft: Signal<Draft>;
  /** the revision that is being corrected; null for a new test */
  readonly revision: Signal<number | null>;
  readonly read: ReadonlySignal<ReadDraft>;
  /** messages that stand beside their fields now */
  readonly shown: ReadonlySignal<Messages>;
  /** fields that were left once, so that a half-typed one isn't judged */
  readonly left: Signal<ReadonlySet<string>>;
  readonly submitted: Signal<boolean>;
  readonly serverErrors: Signal<Messages>;
  readonly problem: Signal<string | null>;
  /** numbers that are asked about before it is saved; null while nothing is asked */
  readonly questions: Signal<readonly Question[] | null>;
  /** the test on its way to the server; null while none is */
  readonly saving: Signal<Saving<BenchTest> | null>;
  /** what waits for the server and is corrected here; null where nothing does */
  readonly waiting: Waiting | null;
}

let made = 0;

/** A row as a whole is judged once one of its cells was left. */
function isLeft(left: ReadonlySet<string>, path: string): boolean {
  return (
    left.has(path) || (/^rows\.\d+$/.test(path) && [...left].some((each) => each.startsWith(`${path}.`)))
  );
}

/**
 * A form over a draft.
 *
 * @param kept - the draft, where it was typed before and not saved
 * @param isJudged - which fields are this form's to judge, all unless given
 */
export function createForm(
  address: string | null,
  draft: Draft,
  revision: number | null,
  kept: Kept<Draft> | null = null,
  isJudged: (path: string) => boolean = () => true,
): FormModel {
  const text = signal(draft);
  const left = signal<ReadonlySet<string>>(new Set());
  const submitted = signal(false);
  const serverErrors = signal<Messages>(new Map());
  const read = computed(() => readDraft(text.value));
  const shown = computed<Messages>(() => {
    const own = [...read.value.errors].filter(
      ([path]) => isJudged(path) && (submitted.value || isLeft(left.value, path)),
    );
    return new Map([...serverErrors.value, ...own]);
  });
  return {
    spec: KINDS[draft.kind],
    id: made++,
    address,
    kept,
    draft: text,
    revision: signal(revision),
    read,
    shown,
    left,
    submitted,
    serverErrors,
    problem: signal(null),
    questions: signal(null),
    saving: signal(null),
    waiting: null,
  };
}

/** Changes the draft; what the server said of the field, and what was asked, is about what stood there before. */
export function change(form: FormModel, next: Draft, path?: string): void {
  form.draft.value = next;
  form.questions.value = null;
  if (form.address !== null) keepDraft(form.address, next, form.revision.value);
  if (path === undefined || !form.serverErrors.value.has(path)) return;
  form.serverErrors.value = new Map([...form.serverErrors.value].filter(([key]) => key !== path));
}

export function forget(form: FormModel): void {
  if (form.address !== null) forgetDraft(form.address);
}

/** Fields were left: from now on their messages are shown. */
export function leave(form: FormModel, ...paths: readonly string[]): void {
  if (paths.every((path) => form.left.value.has(path))) return;
  form.left.value = new Set([...form.left.value, ...paths]);
}

export function typeField(form: FormModel, path: string, text: string): void {
  change(form, withField(form.draft.value, path, text), path);
}

/** A number above the rows was left: its unit is written out. */
export function leaveField(form: FormModel, path: string, spec: NumberSpec): void {
  leave(form, path);
  const text = form.draft.value.fields[path] ?? "";
  const written = settledText(spec, text);
  if (written !== text) typeField(form, path, written);
}

export function typeCell(form: FormModel, key: number, column: string, text: string): void {
  change(form, withCell(form.draft.value, key, column, text), `rows.${key}.${column}`);
}

/** A cell was left: its unit is written out. What is meant in the column's other cells is its header's to say. */
export function leaveCell(form: FormModel, key: number, column: string, spec: NumberSpec): void {
  leave(form, `rows.${key}.${column}`);
  const text = form.draft.value.rows.find((row) => row.key === key)?.cells[column] ?? "";
  const written = settledText(spec, text);
  if (written !== text) typeCell(form, key, column, written);
}

/** @returns the unit meant where none is typed in a column */
export function unitOf(form: FormModel, column: string, name: DimensionName): string {
  return form.draft.value.units[column] ?? unitShown(name);
}

/** From now on another unit is meant in a column; what is typed already keeps its own. */
export function chooseUnit(form: FormModel, column: string, unit: string): void {
  const draft = form.draft.value;
  change(form, { ...draft, units: { ...draft.units, [column]: unit } });
}

export function typeHole(form: FormModel, key: number, name: HoleNumber | "edge", text: string): void {
  change(form, withHole(form.draft.value, key, { [name]: text }), `plate.holes.${key}.${name}`);
}

/** A number of a hole was left: its unit is written out. */
export function leaveHole(form: FormModel, key: number, name: HoleNumber): void {
  leave(form, `plate.holes.${key}.${name}`);
  const text = form.draft.value.holes.find((hole) => hole.key === key)?.[name] ?? "";
  const written = settledText(HOLE_NUMBERS[name], text);
  if (written !== text) typeHole(form, key, name, written);
}

/** @returns the key of the row that was added */
export function addRow(form: FormModel): number {
  const next = withNewRow(form.draft.value, carriedOf(form.spec));
  change(form, next);
  return next.rows[next.rows.length - 1].key;
}
