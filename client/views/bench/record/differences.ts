import type { Difference } from "../../../ui/Differences.tsx";
import type { Draft } from "./draft.ts";
import { labelOf } from "./fieldErrors.ts";

/** Between the counts of open holes in the text of a row. */
export const OPEN_BETWEEN = " + ";

/** Every text of a draft by a path with the places of rows and holes, empty ones left out. */
export function flat(draft: Draft): Map<string, string> {
  const texts = new Map(Object.entries(draft.fields));
  const own = draft.fields.plate ? [] : draft.holes;
  own.forEach(({ key: _, ...hole }, i) => {
    for (const [name, text] of Object.entries(hole)) texts.set(`plate.holes.${i}.${name}`, text);
  });
  draft.rows.forEach((row, i) => {
    for (const [column, text] of Object.entries(row.cells)) texts.set(`rows.${i}.${column}`, text);
    texts.set(`rows.${i}.open`, row.open.join(OPEN_BETWEEN));
    texts.set(`rows.${i}.setAside`, row.aside ?? "");
  });
  return new Map([...texts].filter(([, text]) => text !== ""));
}

/** Rows and holes renumbered by their places, so that two drafts can be laid side by side. */
export function byPlace(draft: Draft): Draft {
  return {
    ...draft,
    holes: draft.holes.map((hole, key) => ({ ...hole, key })),
    rows: draft.rows.map((row, key) => ({ ...row, key })),
  };
}

/**
 * What one draft says otherwise than another, field by field, in the order of the form.
 *
 * @param textFor - how a text is shown, a part's id by its name
 */
export function differences(
  before: Draft,
  after: Draft,
  textFor: (path: string, text: string) => string = (_path, text) => text,
): Difference[] {
  const was = flat(before);
  const is = flat(after);
  const longer = byPlace(after.rows.length >= before.rows.length ? after : before);
  return [...new Set([...was.keys(), ...is.keys()])]
    .filter((path) => was.get(path) !== is.get(path))
    .map((path) => ({
      path,
      label: labelOf(path, longer),
      before: textFor(path, was.get(path) ?? ""),
      after: textFor(path, is.get(path) ?? ""),
    }));
}
