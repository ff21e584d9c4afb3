import { useState } from "preact/hooks";
import type { Draft } from "../record/draft.ts";
import { columnsOf, hasPlate } from "../record/kinds.ts";
import type { ColumnSpec } from "../record/spec.ts";
import { placeOf } from "./cellKeys.ts";
import { change, type FormModel, leave } from "./model.ts";
import { blockOf, pasteBlock, type Target } from "./pasteBlock.ts";

interface Paste {
  readonly before: Draft;
  readonly after: Draft;
  readonly words: string;
}

interface UsePaste {
  readonly paste: (event: ClipboardEvent) => void;
  /** what the last paste did, until something else is changed; null without one */
  readonly pasted: string | null;
  readonly undo: () => void;
}

/** A block from a spreadsheet, pasted into a cell: laid over the table, said in words, undone by a button. */
export function usePaste(form: FormModel, columns: readonly ColumnSpec[]): UsePaste {
  const [last, setLast] = useState<Paste | null>(null);
  const paste = (event: ClipboardEvent) => {
    const at = placeOf(event.target);
    const block = blockOf(event.clipboardData?.getData("text/plain") ?? "");
    if (!at || !block) return;
    event.preventDefault();
    const before = form.draft.value;
    const holes = hasPlate(form.spec, before.fields) ? before.holes.map((_, hole): Target => ({ hole })) : [];
    const all = [...columnsOf(form.spec, before.fields), ...holes];
    const done = pasteBlock(form.spec, before, block, at, [...columns, ...holes], all);
    change(form, done.draft);
    const paths = all.map((target) => ("key" in target ? target.key : "open"));
    leave(form, ...done.keys.flatMap((key) => paths.map((path) => `rows.${key}.${path}`)));
    setLast({ before, after: done.draft, words: done.words });
  };
  const isLast = last !== null && form.draft.value === last.after;
  return {
    paste,
    pasted: isLast ? last.words : null,
    undo: () => last && change(form, last.before),
  };
}
