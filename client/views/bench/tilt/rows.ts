import { asRead } from "../../../../shared/units/decimalMark.ts";
import { formatFixed, inUnit } from "../../../../shared/units/format.ts";
import { isGood, readNumber } from "../../../../shared/units/readNumber.ts";
import { type Draft, withCell, withNewRow } from "../record/draft.ts";

/** @returns a tilt as a row takes it: "31.4 °" */
export const tiltText = (tilt: number): string => `${asRead(inUnit(tilt, "angle").toFixed(1))} °`;

/** @returns a tilt as it is read: "31.4°" */
export const tiltWords = (tilt: number): string => `${formatFixed(inUnit(tilt, "angle"), 1)}°`;

/** @returns the draft with a row that hasn't slid yet, and that row's key and number */
function openRow(draft: Draft): { readonly draft: Draft; readonly key: number; readonly held: string } {
  const last = draft.rows.at(-1);
  const isOpen = last !== undefined && last.aside === null && (last.cells.slid ?? "").trim() === "";
  const next = isOpen ? draft : withNewRow(draft, new Set());
  const row = next.rows[next.rows.length - 1];
  return { draft: next, key: row.key, held: row.cells.held ?? "" };
}

/** @returns the draft once it held at a tilt: the greatest that held stays in the slide that is under way */
export function withHeld(draft: Draft, tilt: number): { readonly draft: Draft; readonly key: number } {
  const { draft: next, key, held } = openRow(draft);
  const before = held.trim() === "" ? null : readNumber({ dimension: "angle" }, held);
  if (before && isGood(before) && before.value >= tilt) return { draft: next, key };
  return { draft: withCell(next, key, "held", tiltText(tilt)), key };
}

/** @returns the draft once it slid at a tilt: the slide is over, the next begins in another row */
export function withSlid(draft: Draft, tilt: number): { readonly draft: Draft; readonly key: number } {
  const { draft: next, key } = openRow(draft);
  return { draft: withCell(next, key, "slid", tiltText(tilt)), key };
}
