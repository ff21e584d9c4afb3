import type { Bench } from "../../shared/book/bench.ts";
import type { Store } from "./store.ts";

/** @returns what reads the whole book, once for each state of it */
export function currentBench(store: Store): () => Bench {
  let kept: Bench | null = null;
  store.feed.subscribe({
    next: () => {
      kept = null;
    },
    end: () => {
      kept = null;
    },
  });
  return () => {
    // What lies in the store went through the schemas when it was written.
    const bench = kept ?? (store.dump().records as unknown as Bench);
    kept = bench;
    return bench;
  };
}
