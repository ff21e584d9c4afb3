import { useEffect, useMemo, useRef } from "preact/hooks";
import type { Book } from "../../shared/book/resolve.ts";
import type { StoredOf } from "../../shared/model/record.ts";
import { changes, fromAddress } from "./build.ts";
import { type Changes, withChanges } from "./handles.ts";
import { isChanged, type Outcome, solve } from "./outcome.ts";
import { shownOutcome } from "./shownOutcome.ts";

export interface Outcomes {
  readonly tried: Changes;
  readonly asStored: Outcome;
  /** with what is tried; the same object as stored where nothing is */
  readonly outcome: Outcome;
}

/** The book solved for the build on the screen, with and without what the address or a handle tries. */
export function useOutcomes(book: Book, build: StoredOf<"builds">): Outcomes {
  const loaded = useRef<string | null>(null);
  if (loaded.current !== build.id) {
    loaded.current = build.id;
    fromAddress();
  }
  const tried = changes.value;
  const asStored = useMemo(() => solve(book, build.data), [book, build]);
  const outcome = useMemo(
    () => (isChanged(tried) ? solve(book, withChanges(build.data, tried)) : asStored),
    [book, build, asStored, tried],
  );
  useEffect(() => {
    shownOutcome.value = outcome;
  }, [outcome]);
  useEffect(
    () => () => {
      shownOutcome.value = null;
    },
    [],
  );
  return { tried, asStored, outcome };
}
