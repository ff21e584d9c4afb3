import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { type Draft, type DraftHole, EMPTY_HOLE } from "../record/draft.ts";
import { fieldsOf, KIND_ORDER, KINDS } from "../record/kinds.ts";
import { groupSpeeds } from "../record/speeds.ts";
import type { GoodLine } from "./points.ts";

/** Fields and holes that a file's own head lines give, as they were exported. */
export interface FileHead {
  /** the kind of test that the file says it is; null where it doesn't say */
  readonly kind: TestKind | null;
  readonly fields: Readonly<Record<string, string>>;
  readonly holes: readonly DraftHole[];
}

/** @returns what the head lines of a file say about its test; lines that are no field of such a test are left out */
export function headOf(head: Readonly<Record<string, string>>, kind: TestKind = "curve"): FileHead {
  const known = new Set(fieldsOf(KINDS[kind]).map((field) => field.key));
  const fields = Object.fromEntries(Object.entries(head).filter(([key]) => known.has(key)));
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

/** One draft of all lines, or one for each test that a column names; of a curve also one a speed, slowest first. */
export function draftsOf(base: Draft, good: readonly GoodLine[], perSpeed: boolean): Draft[] {
  return byTest(good)
    .flatMap((group) => (perSpeed ? bySpeed(group) : [group]))
    .map((group) => ({
      ...base,
      fields: group[0]?.test ? { ...base.fields, title: group[0].test } : base.fields,
      rows: group.map(({ row }) => row),
    }));
}
