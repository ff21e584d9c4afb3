import { type Draft, type DraftHole, EMPTY_HOLE } from "../record/draft.ts";
import { fieldsOf, KINDS } from "../record/kinds.ts";
import { groupSpeeds } from "../record/speeds.ts";
import type { ImportKind } from "./mapping.ts";
import type { GoodLine } from "./points.ts";

/** Fields and holes that a file's own head lines give, as they were exported. */
export interface FileHead {
  readonly fields: Readonly<Record<string, string>>;
  readonly holes: readonly DraftHole[];
}

/** @returns what the head lines of a file say about its test; lines that are no field of such a test are left out */
export function headOf(head: Readonly<Record<string, string>>, kind: ImportKind = "curve"): FileHead {
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
  return { fields, holes };
}

/** One draft of all points, or one a speed, slowest first. */
export function draftsOf(base: Draft, good: readonly GoodLine[], perSpeed: boolean): Draft[] {
  const groups = perSpeed ? groupSpeeds(good.map((line) => line.speed)) : [good.map((_, i) => i)];
  return groups.map((group) => ({ ...base, rows: group.map((i) => good[i].row) }));
}
