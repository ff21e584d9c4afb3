import type { Difference } from "../Differences.tsx";

/** Where a field's text comes from. */
export type Side = "mine" | "theirs";

/** A field in which two corrections of one record say different things: `before` is mine, `after` is theirs. */
export interface Conflict extends Difference {
  /** who changed it since the state that both began with */
  readonly changedBy: Side | "both";
}

/**
 * Two corrections of one record laid side by side, field by field.
 *
 * @param base - what both began with; null where that isn't known: then each field counts as changed by both
 * @param differ - what one state says otherwise than another, by field
 */
export function threeWay<T>(
  base: T | null,
  mine: T,
  theirs: T,
  differ: (before: T, after: T) => readonly Difference[],
): Conflict[] {
  const pathsOf = (after: T) => new Set(base === null ? [] : differ(base, after).map(({ path }) => path));
  const [byMe, byThem] = [pathsOf(mine), pathsOf(theirs)];
  return differ(mine, theirs).map((difference) => {
    const { path } = difference;
    const changedBy = byMe.has(path) === byThem.has(path) ? "both" : byMe.has(path) ? "mine" : "theirs";
    return { ...difference, changedBy };
  });
}

export type Choices = ReadonlyMap<string, Side>;

/** @returns for each field that one side alone changed, that side; what both changed is theirs to choose who reads it */
export function firstChoices(conflicts: readonly Conflict[]): Choices {
  return new Map(
    conflicts.flatMap(({ path, changedBy }) => (changedBy === "both" ? [] : [[path, changedBy] as const])),
  );
}

/** @returns one side for every field */
export const allOf = (conflicts: readonly Conflict[], side: Side): Choices =>
  new Map(conflicts.map(({ path }) => [path, side]));
