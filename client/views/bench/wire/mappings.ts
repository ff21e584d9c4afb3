import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { tried } from "../../../state/browserStore.ts";
import type { WireMapping } from "./wireRows.ts";

const keyOf = (kind: TestKind, names: readonly string[]): string =>
  `gripcurve wire 1 ${JSON.stringify([kind, ...names])}`;

/** @returns what the names of an instrument were the last time; empty where it is a new one */
export function mappingFor(kind: TestKind, names: readonly string[]): WireMapping {
  const text = tried(() => localStorage.getItem(keyOf(kind, names)), null);
  if (text === null) return {};
  try {
    const read: unknown = JSON.parse(text);
    return typeof read === "object" && read !== null ? (read as WireMapping) : {};
  } catch (error) {
    if (error instanceof SyntaxError) return {};
    throw error;
  }
}

/** An instrument that says these names is read so from now on. */
export function keepMapping(kind: TestKind, names: readonly string[], mapping: WireMapping): void {
  tried(() => localStorage.setItem(keyOf(kind, names), JSON.stringify(mapping)), undefined);
}
