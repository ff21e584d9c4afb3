import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { tried } from "../../../state/browserStore.ts";
import type { ColumnMapping } from "./mapping.ts";
import type { Condition } from "./select.ts";

/** How the files of one layout are read: what was set by hand and saved with once. */
export interface Layout {
  readonly mapping: readonly ColumnMapping[];
  readonly only: readonly Condition[];
  readonly splitBy: number | null;
}

/** Another number where a layout changes its shape: older ones are then forgotten. */
const KEY = "gripcurve layouts 1";
/** So many layouts are remembered, the last used ones. Judgement. */
const MOST = 50;

type Kept = readonly (readonly [address: string, layout: Layout])[];

/** Files with the same names of columns are of one layout. */
const addressOf = (kind: TestKind, header: readonly string[]): string => JSON.stringify([kind, ...header]);

function isKept(content: unknown): content is Kept {
  return (
    Array.isArray(content) &&
    content.every((each: unknown) => {
      if (!Array.isArray(each) || typeof each[0] !== "string") return false;
      const { mapping, only } = (each[1] ?? {}) as Partial<Layout>;
      return Array.isArray(mapping) && Array.isArray(only);
    })
  );
}

function keptLayouts(): Kept {
  const text = tried(() => localStorage.getItem(KEY), null);
  if (text === null) return [];
  try {
    const content: unknown = JSON.parse(text);
    return isKept(content) ? content : [];
  } catch (error) {
    if (error instanceof SyntaxError) return [];
    throw error;
  }
}

/** @returns how a file of such columns was read the last time it was saved; null where none was */
export function layoutOf(kind: TestKind, header: readonly string[]): Layout | null {
  const address = addressOf(kind, header);
  const found = keptLayouts().find(([each]) => each === address)?.[1];
  return found?.mapping.length === header.length ? found : null;
}

/** Remembers how a file was read that was saved. */
export function keepLayout(kind: TestKind, header: readonly string[], layout: Layout): void {
  const address = addressOf(kind, header);
  const others = keptLayouts().filter(([each]) => each !== address);
  const kept: Kept = [[address, layout], ...others.slice(0, MOST - 1)];
  tried(() => localStorage.setItem(KEY, JSON.stringify(kept)), undefined);
}
