import type { Choices } from "../../../ui/merge/threeWay.ts";
import { byPlace, flat, OPEN_BETWEEN } from "./differences.ts";
import { type Draft, type DraftHole, type DraftRow, EMPTY_HOLE } from "./draft.ts";

/** @returns how many rows or holes the texts of a draft name under a path */
function countOf(texts: ReadonlyMap<string, string>, start: string): number {
  const places = [...texts.keys()]
    .filter((path) => path.startsWith(start))
    .map((path) => Number(path.slice(start.length).split(".")[0]) + 1);
  return Math.max(0, ...places);
}

/**
 * One draft of two, field by field.
 *
 * @param mine - whose units are meant where none is typed
 * @param theirs - the other, with a unit behind each quantity, as a stored test is written
 * @param choices - by path, where a field's text comes from; where the two agree, none is needed
 */
export function merged(mine: Draft, theirs: Draft, choices: Choices): Draft {
  const texts = new Map(flat(mine));
  const others = flat(theirs);
  for (const [path, side] of choices) {
    if (side === "mine") continue;
    const text = others.get(path);
    if (text === undefined) texts.delete(path);
    else texts.set(path, text);
  }
  const at = (path: string) => texts.get(path) ?? "";
  const names = new Set([...Object.keys(mine.fields), ...Object.keys(theirs.fields)]);
  const fields = Object.fromEntries([...names].map((name) => [name, at(name)]));
  // A plate of the book brings its own holes; those of a described one are texts like any other.
  const named = fields.plate === mine.fields.plate ? mine : theirs;
  const holes = fields.plate
    ? byPlace(named).holes
    : Array.from({ length: countOf(texts, "plate.holes.") }, (_, key) => holeAt(key, at));
  const columns = new Set([...mine.rows, ...theirs.rows].flatMap(({ cells }) => Object.keys(cells)));
  const rows = Array.from({ length: countOf(texts, "rows.") }, (_, key): DraftRow => {
    const open = at(`rows.${key}.open`).split(OPEN_BETWEEN);
    return {
      key,
      cells: Object.fromEntries([...columns].map((column) => [column, at(`rows.${key}.${column}`)])),
      open: holes.map((_hole, i) => open[i] ?? ""),
      aside: at(`rows.${key}.setAside`) || null,
    };
  });
  return {
    kind: mine.kind,
    units: mine.units,
    fields,
    holes,
    rows: rows.length > 0 ? rows : byPlace(mine).rows,
  };
}

function holeAt(key: number, at: (path: string) => string): DraftHole {
  const names = Object.keys(EMPTY_HOLE) as (keyof typeof EMPTY_HOLE)[];
  const texts = Object.fromEntries(names.map((name) => [name, at(`plate.holes.${key}.${name}`)]));
  return { key, ...EMPTY_HOLE, ...texts };
}
