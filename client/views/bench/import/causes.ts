import type { Trouble, Unread } from "./cells.ts";
import type { CsvLine } from "./lines.ts";

/** What several skipped lines have in common. */
export interface Cause {
  readonly trouble: Trouble;
  /** "current must not be below 0" */
  readonly common: string;
  /** place of the column it is about; null where it is about the whole line */
  readonly column: number | null;
  readonly count: number;
  /** the first of them */
  readonly line: CsvLine;
}

/** Counts skipped lines by what is wrong with them. */
export class Causes {
  private readonly found = new Map<string, Cause>();

  count({ trouble, common }: Unread, line: CsvLine, column: number | null): void {
    const before = this.found.get(common);
    this.found.set(
      common,
      before ? { ...before, count: before.count + 1 } : { trouble, common, column, count: 1, line },
    );
  }

  /** @returns the most frequent first */
  done(): Cause[] {
    return [...this.found.values()].sort((a, b) => b.count - a.count);
  }
}
