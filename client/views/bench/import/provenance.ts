import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { adjustmentInWords } from "./adjust.ts";
import { thinnedInWords } from "./countWords.ts";
import type { Points, PointsRequest } from "./points.ts";
import { IGNORE, roleLabel } from "./roles.ts";

/** What a note is made of. */
export interface Provenance {
  /** of the file; empty for a pasted text */
  readonly name: string;
  readonly kind: TestKind;
  readonly request: PointsRequest;
  readonly points: Points;
  /** skipped lines are left out because the maker said so */
  readonly leavesOut: boolean;
}

/** @returns what was done to a file's readings on the way into a test, for its note; empty where they are as the file has them */
export function provenanceNote({ name, kind, request, points, leavesOut }: Provenance, test: string): string {
  const { mapping, table, only = [] } = request;
  const changed = mapping.flatMap((column) => {
    const words = column.role === IGNORE ? null : adjustmentInWords(column);
    return words === null ? [] : [`${roleLabel(kind, column.role)} ${words}`];
  });
  const chosen = only
    .filter(({ text }) => text.trim() !== "")
    .map(({ column, text }) => `only lines with ${table.header[column]} ${text.trim()}`);
  const thinning = points.thinning.get(test);
  const thinned = (thinning && thinnedInWords(thinning)) ?? null;
  const skipped = leavesOut && points.skipped > 0 ? [`${points.skipped} lines skipped`] : [];
  const words = [...changed, ...chosen, ...(thinned === null ? [] : [thinned]), ...skipped];
  if (words.length === 0) return "";
  return `From ${name || "pasted text"}: ${words.join("; ")}.`;
}
