import { type Signal, signal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { ApiError, api } from "../../../state/api.ts";
import type { Combination } from "../answers.ts";
import { jobPath } from "../state/job.ts";

/** A pointer that rests so long asks for the combination [ms]. */
const REST = 60;

type Kept = Signal<ReadonlyMap<string, Combination>>;

async function fetchInto(kept: Kept, job: string, index: string): Promise<void> {
  try {
    const combination = await api.get<Combination>(`${jobPath(job)}/set?index=${index}`);
    kept.value = new Map(kept.value).set(index, combination);
  } catch (error) {
    // The sentence about a server that is lost, or a search that is gone, stands above the plot.
    if (!(error instanceof ApiError)) throw error;
  }
}

/**
 * The combinations under the pointer, fetched once it rests there and kept.
 *
 * @returns `read`, to be told of the one under the pointer, and `found`, which whoever renders with it follows
 */
export function useCombinationWords(job: string) {
  const kept: Kept = useMemo(() => signal(new Map()), [job]);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(timer.current), [job]);
  return {
    found: (index: string): Combination | null => kept.value.get(index) ?? null,
    read: (index: string | null) => {
      clearTimeout(timer.current);
      if (index === null || kept.peek().has(index)) return;
      timer.current = setTimeout(() => void fetchInto(kept, job, index), REST);
    },
  };
}
