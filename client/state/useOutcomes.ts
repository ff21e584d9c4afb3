import { useRef } from "preact/hooks";
import type { StoredOf } from "../../shared/model/record.ts";
import { changes, fromAddress } from "./build.ts";
import type { Changes } from "./handles.ts";
import { shownOutcome, storedOutcome } from "./onScreen.ts";
import type { Outcome } from "./outcome.ts";

export interface Outcomes {
  readonly tried: Changes;
  readonly asStored: Outcome;
  /** with what is tried; the same object as stored where nothing is */
  readonly outcome: Outcome;
}

/** The build on the screen, solved with and without what the address or a setting tries. */
export function useOutcomes(build: StoredOf<"builds">): Outcomes {
  const loaded = useRef<string | null>(null);
  if (loaded.current !== build.id) {
    loaded.current = build.id;
    fromAddress();
  }
  const [asStored, outcome] = [storedOutcome.value, shownOutcome.value];
  if (!asStored || !outcome) throw new RangeError("No build is on the screen.");
  return { tried: changes.value, asStored, outcome };
}
