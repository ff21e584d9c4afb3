import { computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Book } from "../../../../shared/book/book.ts";
import type { NamedParts } from "../../../../shared/book/named.ts";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { dayOf, firstDraft } from "../forms/defaults.ts";
import { createForm, type FormModel } from "../forms/model.ts";
import { mostRows } from "../record/kinds.ts";
import type { FieldTexts } from "../record/spec.ts";
import type { CsvChoices, CsvTable } from "./csv.ts";
import { type ColumnMapping, guessMapping } from "./mapping.ts";
import { missingRoles } from "./missing.ts";
import { type Points, type PointsRequest, readPoints } from "./points.ts";
import { OPEN } from "./roles.ts";
import { type Source, tableOf } from "./source.ts";
import { draftsOf, type FileHead, headOf } from "./tests.ts";

/** An import in the making: the text, what its columns are, and the test that it becomes. */
export interface ImportModel {
  /** of the test that the file becomes */
  readonly kind: TestKind;
  /** the plates and instruments that a file may name */
  readonly parts: NamedParts;
  readonly source: Signal<Source | null>;
  /** why a text or a file can't be read */
  readonly message: Signal<string | null>;
  readonly choices: Signal<CsvChoices>;
  readonly table: Signal<CsvTable | null>;
  readonly mapping: Signal<readonly ColumnMapping[]>;
  readonly commonSpeed: Signal<string>;
  readonly perSpeed: Signal<boolean>;
  /** the fields above the rows */
  readonly form: FormModel;
  /** what is not chosen yet */
  readonly missing: ReadonlySignal<readonly string[]>;
  readonly points: ReadonlySignal<Points>;
  /** one form a test, as they will be sent */
  readonly forms: ReadonlySignal<readonly FormModel[]>;
  /** {@link keyOf} of the tests that are saved already */
  readonly saved: Signal<ReadonlySet<string>>;
  /** by line, why it was refused when it was sent */
  readonly refused: Signal<ReadonlyMap<number, string>>;
}

const NO_POINTS: Points = { good: [], bad: [] };

/** Nothing of an earlier test is taken for a file's own: whose rotor, motor and instruments it was, must be said. */
function blank(fields: FieldTexts): FieldTexts {
  return Object.fromEntries(Object.keys(fields).map((key) => [key, KEPT.has(key) ? fields[key] : ""]));
}

const KEPT: ReadonlySet<string> = new Set(["date"]);

/** @returns an import with nothing in it */
export function createImport(book: Book, now: Date, kind: TestKind = "curve"): ImportModel {
  const asked = { kind, today: dayOf(now) } as const;
  const draft = firstDraft(book, asked);
  const isAboveRows = (path: string) => !path.startsWith("rows");
  const empty = { ...draft, fields: blank(draft.fields), holes: [], rows: [], units: {} };
  const form = createForm(null, empty, null, null, isAboveRows);
  const source = signal<Source | null>(null);
  const table = signal<CsvTable | null>(null);
  const mapping = signal<readonly ColumnMapping[]>([]);
  const commonSpeed = signal("");
  const perSpeed = signal(false);
  const request = computed<PointsRequest | null>(() => {
    if (!table.value) return null;
    const { holes, fields: typed } = form.draft.value;
    const flowFrom = typed.flowFrom || undefined;
    const holeKinds = flowFrom === "bleed-plate" ? holes.length : 0;
    const speed = commonSpeed.value;
    return { kind, table: table.value, mapping: mapping.value, commonSpeed: speed, flowFrom, holeKinds };
  });
  const missing = computed(() => (request.value ? missingRoles(request.value) : []));
  const points = computed(() =>
    request.value && missing.value.length === 0 ? readPoints(request.value) : NO_POINTS,
  );
  const forms = computed(() =>
    draftsOf(form.draft.value, points.value.good, perSpeed.value).map((each) => createForm(null, each, null)),
  );
  const message = signal<string | null>(null);
  const choices = signal<CsvChoices>({});
  const saved = signal<ReadonlySet<string>>(new Set());
  const refused = signal<ReadonlyMap<number, string>>(new Map());
  return {
    kind,
    parts: book,
    source,
    message,
    choices,
    table,
    mapping,
    commonSpeed,
    perSpeed,
    form,
    missing,
    points,
    forms,
    saved,
    refused,
  };
}

/** @returns which of the file's lines a test is made of */
export function keyOf(form: FormModel): string {
  return form.draft.value.rows.map((row) => row.key).join(" ");
}

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

/** Takes a text in: finds its table, guesses its columns, and takes over what its own head lines say of the test. */
export function takeIn(model: ImportModel, source: Source, choices: CsvChoices = {}): void {
  const { table, message } = tableOf(source, choices);
  model.source.value = source;
  model.choices.value = choices;
  model.message.value = message;
  model.saved.value = new Set();
  model.refused.value = new Map();
  model.table.value = table;
  if (!table) return;
  const mapping = guessMapping(table.header, model.kind);
  const head = headOf(table.head, model.kind, model.parts);
  const draft = model.form.draft.value;
  const fields = withFlowFrom(fieldsFrom(draft.fields, source, head), mapping);
  model.mapping.value = mapping;
  const holes = head.kind === null && head.holes.length === 0 ? draft.holes : head.holes;
  model.form.draft.value = { ...draft, fields, holes };
}

/** @returns the kind of test that the text says it is, where that is another one than is being imported; null where not */
export function otherKind({ kind, table }: ImportModel): TestKind | null {
  const said = table.value ? headOf(table.value.head, kind).kind : null;
  return said === kind ? null : said;
}

/** @returns why the tests can't be sent as they are, in words; null where they can */
export function tooManyRows(forms: readonly FormModel[]): string | null {
  const [first] = forms;
  if (!first) return null;
  const { kind, row } = first.spec;
  const most = Math.max(...forms.map((form) => form.draft.value.rows.length));
  if (most <= mostRows(kind)) return null;
  const way = kind === "curve" ? "Save one test a speed, or thin" : "Split it, or thin";
  return `There are ${most} ${row}s in one test; allowed: at most ${mostRows(kind)}. ${way} the file out.`;
}
