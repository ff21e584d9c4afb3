import type { ReadonlySignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { resting, settled } from "./build.ts";

function useWhile<T>(follows: ReadonlySignal<boolean>, value: T): T {
  const kept = useRef(value);
  if (follows.value) kept.current = value;
  return kept.current;
}

/** @returns the value as it was when a handle was taken, while it is held: what must not follow every move stands still */
export const useSettled = <T>(value: T): T => useWhile(settled, value);

/** @returns the value as it was when a handle was moved, until it stands for a moment: what may come a little later leaves the move to what may not */
export const useResting = <T>(value: T): T => useWhile(resting, value);
