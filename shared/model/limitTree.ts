import type { Limits } from "../units/limits.ts";

export const above0 = (max: number) => ({ positive: true, max }) as const;
export const from0 = (max: number) => ({ min: 0, max }) as const;
export const between = (min: number, max: number) => ({ min, max }) as const;
export const count = (min: number, max: number) => ({ min, max, whole: true }) as const;

/** Limits by the record's own keys; those of a list's entries stand for each of them. */
export interface LimitTree {
  readonly [key: string]: Limits | LimitTree;
}

const isLimits = (node: Limits | LimitTree): node is Limits =>
  Object.values(node).every((value) => typeof value !== "object");

/**
 * The limits at a path of a record.
 *
 * @param path - "cell.capacity", "sizes.2.diameter": places of a list are passed over
 * @returns undefined where no number with limits lies there
 */
export function limitsAt(tree: LimitTree, path: string): Limits | undefined {
  let node: Limits | LimitTree | undefined = tree;
  for (const key of path.split(".")) {
    if (node === undefined || isLimits(node)) return undefined;
    const next: Limits | LimitTree | undefined = node[key];
    if (next !== undefined || !/^\d+$/.test(key)) node = next;
  }
  return node !== undefined && isLimits(node) ? node : undefined;
}
