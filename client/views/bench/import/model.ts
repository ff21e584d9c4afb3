import { computed, effect, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Book } from "../../../../shared/book/book.ts";
import type { NamedParts } from "../../../../shared/book/named.ts";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { dayOf, firstDraft } from "../forms/defaults.ts";
import { createForm, type FormModel } from "../forms/model.ts";
import { isByHand, mostRows } from "../record/kinds.ts";
import type { FieldTexts } from "../record/spec.ts";
import type { CsvChoices, CsvTable } from "./csv.ts";
import type { ColumnMapping } from "./mapping.ts";
import { missingRoles } from "./missing.ts";
import type { Points, PointsRequest } from "./points.ts";
import { provenanceNote } from "./provenance.ts";
import { TEST } from "./roles.ts";
import { createScan } from "./scan.ts";
import type { Condition } from "./select.ts";
import type { ReadSource, Source } from "./source.ts";
import { draftsOf } from "./tests.ts";

/** An import in the making: the text, what its columns are, and the test that it becomes. */
export interface ImportModel {
  /** of the test that the file becomes */
  readonly kind: TestKind;
  /** the plates and instruments that a file may name */
  readonly parts: NamedParts;
  readonly source: Signal<Source | null>;
  /** what was read of it, cells apart */
  readonly read: Signal<ReadSource | null>;
  /** stops what reads a file; null where none is read */
  readonly reading: Signal<AbortController | null>;
  /** which part of a file is read, 0 to 1; null where none is being read */
  readonly part: Signal<number | null>;
  /** why a text or a file can't be read */
  readonly message: Signal<string | null>;
  readonly choices: Signal<CsvChoices>;
  readonly table: Signal<CsvTable | null>;
  readonly mapping: Signal<readonly ColumnMapping[]>;
  /** the columns are read as they were in the last file of this layout */
  readonly remembered: Signal<boolean>;
  readonly commonSpeed: Signal<string>;
  readonly perSpeed: Signal<boolean>;
  /** only lines that these ask for are read */
  readonly only: Signal<readonly Condition[]>;
  /** place of the column that splits the file into several tests */
  readonly splitBy: Signal<number | null>;
  /** only every n-th line is kept */
  readonly every: Signal<number>;
  /** the maker said that skipped lines may be left out */
  readonly leavesOut: Signal<boolean>;
  /** the fields above the rows */
  readonly form: FormModel;
  /** what is not chosen yet */
  readonly missing: ReadonlySignal<readonly string[]>;
  readonly points: ReadonlySignal<Points>;
  /** which part of the lines is read, 0 to 1; null where all are */
  readonly linesRead: ReadonlySignal<number | null>;
  /** one form a test, as they will be sent */
  readonly forms: ReadonlySignal<readonly FormModel[]>;
  /** {@link keyOf} of the tests that are saved already */
  readonly saved: Signal<ReadonlySet<string>>;
  /** by line, why it was refused when it was sent */
  readonly refused: Signal<ReadonlyMap<number, string>>;
  /** gives up what is under way; nothing is read any more */
  readonly stop: () => void;
}

const KEPT: ReadonlySet<string> = new Set(["date"]);

/** Nothing of an earlier test is taken for a file's own: whose rotor, motor and instruments it was, must be said. */
export function blank(fields: FieldTexts): FieldTexts {
  return Object.fromEntries(Object.keys(fields).map((key) => [key, KEPT.has(key) ? fields[key] : ""]));
}

/** What the maker sets of an import. */
function settings() {
  return {
    source: signal<Source | null>(null),
    read: signal<ReadSource | null>(null),
    reading: signal<AbortController | null>(null),
    part: signal<number | null>(null),
    message: signal<string | null>(null),
    choices: signal<CsvChoices>({}),
    table: signal<CsvTable | null>(null),
    mapping: signal<readonly ColumnMapping[]>([]),
    remembered: signal(false),
    commonSpeed: signal(""),
    perSpeed: signal(false),
    only: signal<readonly Condition[]>([]),
    splitBy: signal<number | null>(null),
    every: signal(1),
    leavesOut: signal(false),
    saved: signal<ReadonlySet<string>>(new Set()),
    refused: signal<ReadonlyMap<number, string>>(new Map()),
  };
}

/** A file that is saved as one test a speed may hold that many times what one test does. */
const SPEEDS = 20;

function requestOf(set: ReturnType<typeof settings>, form: FormModel, kind: TestKind): PointsRequest | null {
  const table = set.table.value;
  if (!table) return null;
  const { holes, fields: typed } = form.draft.value;
  const flowFrom = typed.flowFrom || undefined;
  return {
    kind,
    table,
    mapping: set.mapping.value,
    commonSpeed: set.commonSpeed.value,
    flowFrom,
    holeKinds: flowFrom === "bleed-plate" ? holes.length : 0,
    only: set.only.value,
    splitBy: set.splitBy.value,
    every: set.every.value,
    most: isByHand(kind) ? undefined : mostRows(kind) * (set.perSpeed.value ? SPEEDS : 1),
  };
}

const sameRequest = (a: PointsRequest | null, b: PointsRequest | null): boolean =>
  a === b ||
  (a !== null && b !== null && (Object.keys(a) as (keyof PointsRequest)[]).every((key) => a[key] === b[key]));

/** What lines are read by; the same while nothing of it changes. */
function steady(request: ReadonlySignal<PointsRequest | null>): ReadonlySignal<PointsRequest | null> {
  let last: PointsRequest | null = null;
  return computed(() => {
    const now = request.value;
    if (!sameRequest(last, now)) last = now;
    return last;
  });
}

/** @returns an import with nothing in it */
export function createImport(book: Book, now: Date, kind: TestKind = "curve"): ImportModel {
  const draft = firstDraft(book, { kind, today: dayOf(now) });
  const isAboveRows = (path: string) => !path.startsWith("rows");
  const empty = { ...draft, fields: blank(draft.fields), holes: [], rows: [], units: {} };
  const form = createForm(null, empty, null, null, isAboveRows);
  const set = settings();
  const request = steady(computed(() => requestOf(set, form, kind)));
  const missing = computed(() => (request.value ? missingRoles(request.value) : []));
  const scan = createScan();
  const stopReading = effect(() => scan.start(missing.value.length === 0 ? request.value : null));
  const forms = computed(() => {
    const points = scan.points.value;
    const from = request.value;
    const name = set.source.value?.name ?? "";
    const noteOf = (test: string) =>
      from ? provenanceNote({ name, kind, request: from, points, leavesOut: set.leavesOut.value }, test) : "";
    const isTitled = set.splitBy.value === null && set.mapping.value.some(({ role }) => role === TEST);
    const drafts = draftsOf(form.draft.value, points.good, set.perSpeed.value, { isTitled, noteOf });
    return drafts.map((each) => createForm(null, each, null));
  });
  const stop = () => {
    set.reading.value?.abort();
    stopReading();
    scan.start(null);
  };
  return { kind, parts: book, ...set, form, missing, points: scan.points, linesRead: scan.part, forms, stop };
}

/** @returns which of the file's lines a test is made of */
export function keyOf(form: FormModel): string {
  return form.draft.value.rows.map((row) => row.key).join(" ");
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
