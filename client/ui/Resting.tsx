import type { ComponentType } from "preact";
import { useMemo } from "preact/hooks";
import { useResting } from "../state/useSettled.ts";

interface RestingProps<P> {
  readonly panel: ComponentType<P>;
  readonly props: P;
}

/** A panel that stands as it was while a handle is moved, and follows once it stands for a moment or is let go. */
export function Resting<P extends object>({ panel: Panel, props }: RestingProps<P>) {
  const still = useResting(props);
  return useMemo(() => <Panel {...still} />, [Panel, ...Object.values(still)]);
}
