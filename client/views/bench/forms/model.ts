import { computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { dimension } from "../../../../shared/units/dimensions.ts";
import type { Sending } from "../../../state/sendRecord.ts";
import type { Question } from "../../../ui/AskBeforeSaving.tsx";
import { type Draft, withCell, withField, withHole, withNewRow } from "../record/draft.ts";
import { KINDS } from "../record/kinds.ts";
import { carriedOf, type Messages, type ReadDraft, readDraft } from "../record/readDraft.ts";
import type { KindSpec } from "../record/spec.ts";
import { settled } from "../record/texts.ts";
import { forgetDraft, keepDraft } from "./kept.ts";

/** A form: what is typed, what is wrong with it, and which of that is said yet. */
export interface FormModel {
  readonly spec: KindSpec;
  /** under which what is typed is kept in this tab; null where it is not */
  readonly address: string | null;
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
  readonly saving: Signal<Sending<BenchTest> | null>;
}

/**
 * A form over a draft.
 *
 * @param isJudged - which fields are this form's to judge, all unless given
 */
export function createForm(
  address: string | null,
  draft: Draft,
  revision: number | null,
  isJudged: (path: string) => boolean = () => true,
): FormModel {
  const text = signal(draft);
  const left = signal<ReadonlySet<string>>(new Set());
  const submitted = signal(false);
  const serverErrors = signal<Messages>(new Map());
  const read = computed(() => readDraft(text.value));
  const shown = computed<Messages>(() => {
    const own = [...read.value.errors].filter(
      ([path]) => isJudged(path) && (submitted.value || left.value.has(path)),
    );
    return new Map([...serverErrors.value, ...own]);
  });
  return {
    spec: KINDS[draft.kind],
    address,
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
  };
}

/** Changes the draft; what the server said of the field, and what was asked, is about what stood there before. */
export function change(form: FormModel, next: Draft, path?: string): void {
  form.draft.value = next;
  form.questions.value = null;
  if (form.address !== null) keepDraft(form.address, { draft: next, revision: form.revision.value });
  if (path === undefined || !form.serverErrors.value.has(path)) return;
  form.serverErrors.value = new Map([...form.serverErrors.value].filter(([key]) => key !== path));
}

export function forget(form: FormModel): void {
  if (form.address !== null) forgetDraft(form.address);
}

/** A field was left: from now on its message is shown. */
export function leave(form: FormModel, path: string): void {
  if (form.left.value.has(path)) return;
  form.left.value = new Set([...form.left.value, path]);
}

export function typeField(form: FormModel, path: string, text: string): void {
  change(form, withField(form.draft.value, path, text), path);
}

/** A quantity above the rows was left: its unit is written out. */
export function leaveField(form: FormModel, path: string, name: DimensionName): void {
  leave(form, path);
  const text = form.draft.value.fields[path] ?? "";
  const written = text.trim() === "" ? null : settled(text, name);
  if (written && written.text !== text) typeField(form, path, written.text);
}

export function typeCell(form: FormModel, key: number, column: string, text: string): void {
  change(form, withCell(form.draft.value, key, column, text), `rows.${key}.${column}`);
}

/** A cell was left: its unit is written out. What is meant in the column's other cells is its header's to say. */
export function leaveCell(form: FormModel, key: number, column: string, name: DimensionName): void {
  leave(form, `rows.${key}.${column}`);
  const draft = form.draft.value;
  const text = draft.rows.find((row) => row.key === key)?.cells[column] ?? "";
  const written = text.trim() === "" ? null : settled(text, name, draft.units[column]);
  if (written && written.text !== text) typeCell(form, key, column, written.text);
}

/** @returns the unit meant where none is typed in a column */
export function unitOf(form: FormModel, column: string, name: DimensionName): string {
  return form.draft.value.units[column] ?? dimension(name).shown[0].label;
}

/** From now on another unit is meant in a column; what is typed already keeps its own. */
export function chooseUnit(form: FormModel, column: string, unit: string): void {
  const draft = form.draft.value;
  change(form, { ...draft, units: { ...draft.units, [column]: unit } });
}

export function typeHole(
  form: FormModel,
  key: number,
  name: "diameter" | "thickness" | "count" | "edge" | "dischargeCoefficient",
  text: string,
): void {
  change(form, withHole(form.draft.value, key, { [name]: text }), `plate.holes.${key}.${name}`);
}

/** A length of a hole was left: its unit is written out. */
export function leaveHole(form: FormModel, key: number, name: "diameter" | "thickness"): void {
  leave(form, `plate.holes.${key}.${name}`);
  const text = form.draft.value.holes.find((hole) => hole.key === key)?.[name] ?? "";
  const written = text.trim() === "" ? null : settled(text, "length");
  if (written && written.text !== text) typeHole(form, key, name, written.text);
}

/** @returns the key of the row that was added */
export function addRow(form: FormModel): number {
  const next = withNewRow(form.draft.value, carriedOf(form.spec));
  change(form, next);
  return next.rows[next.rows.length - 1].key;
}

/**
 * Keeps a pressed button from taking the focus: leaving a field may put a message under it, and a button that moves
 * away between press and release is never clicked.
 */
export function keepFocus(event: MouseEvent): void {
  event.preventDefault();
}
