import { computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Bench } from "../../../../shared/book/bench.ts";
import { dayOf, firstDraft } from "../forms/defaults.ts";
import { createForm, type FormModel } from "../forms/model.ts";
import { MOST_ROWS } from "../record/kinds.ts";
import type { FieldTexts } from "../record/spec.ts";
import type { CsvChoices, CsvTable } from "./csv.ts";
import { type ColumnMapping, guessMapping, type ImportKind } from "./mapping.ts";
import { missingRoles, type Points, type PointsRequest, readPoints } from "./points.ts";
import { type Source, tableOf } from "./source.ts";
import { draftsOf, headOf } from "./tests.ts";

/** An import in the making: the text, what its columns are, and the test that it becomes. */
export interface ImportModel {
  /** of the test that the file becomes */
  readonly kind: ImportKind;
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
}

const NO_POINTS: Points = { good: [], bad: [] };

/** Nothing of an earlier test is taken for a file's own: whose rotor, motor and instruments it was, must be said. */
function blank(fields: FieldTexts): FieldTexts {
  return Object.fromEntries(Object.keys(fields).map((key) => [key, KEPT.has(key) ? fields[key] : ""]));
}

const KEPT: ReadonlySet<string> = new Set(["date"]);

/** @returns an import with nothing in it */
export function createImport(bench: Bench, now: Date, kind: ImportKind = "curve"): ImportModel {
  const asked = { kind, today: dayOf(now) } as const;
  const draft = firstDraft(bench, asked);
  const blanks = blank(draft.fields);
  const fields = kind === "curve" ? { ...blanks, flowFrom: "known-flow" } : blanks;
  const isAboveRows = (path: string) => !path.startsWith("rows");
  const form = createForm(null, { ...draft, fields, holes: [], rows: [] }, null, isAboveRows);
  const source = signal<Source | null>(null);
  const table = signal<CsvTable | null>(null);
  const mapping = signal<readonly ColumnMapping[]>([]);
  const commonSpeed = signal("");
  const perSpeed = signal(false);
  const request = computed<PointsRequest | null>(() => {
    if (!table.value) return null;
    const { holes, fields: typed } = form.draft.value;
    const holeKinds = typed.flowFrom === "bleed-plate" ? holes.length : 0;
    return { kind, table: table.value, mapping: mapping.value, commonSpeed: commonSpeed.value, holeKinds };
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
  return {
    kind,
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
  };
}

/** @returns which of the file's lines a test is made of */
export function keyOf(form: FormModel): string {
  return form.draft.value.rows.map((row) => row.key).join(" ");
}

/** Takes a text in: finds its table, guesses its columns, and takes over what its own head lines say of the test. */
export function takeIn(model: ImportModel, source: Source, choices: CsvChoices = {}): void {
  const { table, message } = tableOf(source, choices);
  model.source.value = source;
  model.choices.value = choices;
  model.message.value = message;
  model.saved.value = new Set();
  model.table.value = table;
  if (!table) return;
  model.mapping.value = guessMapping(table.header, model.kind);
  const { fields, holes } = headOf(table.head, model.kind);
  const draft = model.form.draft.value;
  const title = fields.title ?? (draft.fields.title || source.name.replace(/\.[^.]*$/, ""));
  model.form.draft.value = { ...draft, fields: { ...draft.fields, ...fields, title }, holes };
}

/** @returns why the tests can't be sent as they are, in words; null where they can */
export function tooManyRows(forms: readonly FormModel[]): string | null {
  const most = Math.max(0, ...forms.map((form) => form.draft.value.rows.length));
  if (most <= MOST_ROWS) return null;
  return `There are ${most} points in one test; allowed: at most ${MOST_ROWS}. Save one test a speed, or thin the file out.`;
}
