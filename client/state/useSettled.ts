import { useRef } from "preact/hooks";
import { settled } from "./build.ts";

/** @returns the value as it was when a handle was taken, while it is held: what must not follow every move stands still */
export function useSettled<T>(value: T): T {
  const kept = useRef(value);
  if (settled.value) kept.current = value;
  return kept.current;
}
