import { formatPlain } from "../../../../shared/units/format.ts";
import { type Draft, isBlankRow, withCell, withNewRow } from "../record/draft.ts";

/** What a name of the instrument is in the test. */
export interface WireColumn {
  /** the test's own column; empty: not used */
  readonly column: string;
  readonly unit: string;
}

export type WireMapping = Readonly<Record<string, WireColumn>>;

const DIGITS = 6;

/** @returns readings as texts by the test's columns */
export function textsOf(values: ReadonlyMap<string, number>, mapping: WireMapping): Record<string, string> {
  return Object.fromEntries(
    [...values].flatMap(([name, value]) => {
      const to = mapping[name];
      return to?.column ? [[to.column, `${formatPlain(value, DIGITS)} ${to.unit}`.trim()]] : [];
    }),
  );
}

/** @returns the draft with a reading in a row of its own, and that row's key */
export function withReading(
  draft: Draft,
  texts: Readonly<Record<string, string>>,
  carried: ReadonlySet<string>,
): { readonly draft: Draft; readonly key: number } {
  const last = draft.rows.at(-1);
  const next = last && isBlankRow(last, carried) ? draft : withNewRow(draft, carried);
  const { key } = next.rows[next.rows.length - 1];
  const filled = Object.entries(texts).reduce(
    (now, [column, text]) => withCell(now, key, column, text),
    next,
  );
  return { draft: filled, key };
}
