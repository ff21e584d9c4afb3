import type { NamedParts } from "../../../../shared/book/named.ts";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { type Draft, type DraftHole, EMPTY_HOLE } from "../record/draft.ts";
import { fieldsOf, KIND_ORDER, KINDS } from "../record/kinds.ts";
import type { FieldSpec } from "../record/spec.ts";
import { groupSpeeds } from "../record/speeds.ts";
import type { GoodLine } from "./points.ts";

/** Fields and holes that a file's own head lines give, as they were exported. */
export interface FileHead {
  /** the kind of test that the file says it is; null where it doesn't say */
  readonly kind: TestKind | null;
  readonly fields: Readonly<Record<string, string>>;
  readonly holes: readonly DraftHole[];
}

/** A plate or an instrument that another book named stands described beside its name. */
function isUnknown(field: FieldSpec, text: string, parts: NamedParts): boolean {
  if (field.type !== "part" || !field.otherwise) return false;
  const list: readonly { readonly id: string }[] =
    field.collection === "plates" ? parts.plates : parts.instruments;
  return !list.some(({ id }) => id === text);
}

/**
 * @returns what the head lines of a file say about its test; lines that are no field of such a test are left out, and so are
 * the names of plates and instruments that this book hasn't
 */
export function headOf(
  head: Readonly<Record<string, string>>,
  kind: TestKind = "curve",
  parts: NamedParts = { instruments: [], plates: [] },
): FileHead {
  const fields = Object.fromEntries(
    fieldsOf(KINDS[kind]).flatMap((field) => {
      const text = head[field.key];
      return text === undefined || isUnknown(field, text, parts) ? [] : [[field.key, text]];
    }),
  );
  const holes: DraftHole[] = [];
  for (const [path, text] of Object.entries(head)) {
    const [, index, key] = /^plate\.holes\.(\d{1,2})\.(\w+)$/.exec(path) ?? [];
    if (index === undefined) continue;
    const at = Number(index);
    if (at > holes.length) continue;
    holes[at] = { ...(holes[at] ?? { ...EMPTY_HOLE, key: at }), [key]: text };
  }
  return { kind: KIND_ORDER.find((one) => one === head.kind) ?? null, fields, holes };
}

/** @returns the lines of each test that a column names, in the file's order; all in one where none does */
function byTest(good: readonly GoodLine[]): GoodLine[][] {
  const groups = new Map<string, GoodLine[]>();
  for (const line of good) {
    const group = groups.get(line.test);
    if (group) group.push(line);
    else groups.set(line.test, [line]);
  }
  return groups.size === 0 ? [[]] : [...groups.values()];
}

function bySpeed(good: readonly GoodLine[]): GoodLine[][] {
  const speeds = good.map(({ speed }) => speed ?? Number.NaN);
  return groupSpeeds(speeds).map((group) => group.map((i) => good[i]));
}

/** What the file says of the tests that it becomes. */
export interface Told {
  /** a column has the whole title; else what tells a test apart goes behind the title that was typed */
  readonly isTitled: boolean;
  /** what was done to a test's lines, for its note; empty where nothing was */
  readonly noteOf: (test: string) => string;
}

const AS_IT_IS: Told = { isTitled: true, noteOf: () => "" };

function fieldsOfTest({ fields }: Draft, test: string, { isTitled, noteOf }: Told): Draft["fields"] {
  const title = isTitled || !fields.title ? test : `${fields.title}, ${test}`;
  const note = [fields.note, noteOf(test)].filter(Boolean).join("\n");
  return { ...fields, ...(test === "" ? {} : { title }), ...(note === "" ? {} : { note }) };
}

/** One draft of all lines, or one for each test that a column names; of a curve also one a speed, slowest first. */
export function draftsOf(
  base: Draft,
  good: readonly GoodLine[],
  perSpeed: boolean,
  told: Told = AS_IT_IS,
): Draft[] {
  return byTest(good)
    .flatMap((group) => (perSpeed ? bySpeed(group) : [group]))
    .map((group) => ({
      ...base,
      fields: fieldsOfTest(base, group[0]?.test ?? "", told),
      rows: group.map(({ row }) => row),
    }));
}
