import { signal } from "@preact/signals";
import type { Outcome } from "./outcome.ts";

/** The build on the screen, solved with what is tried; null where no view of a build is shown. */
export const shownOutcome = signal<Outcome | null>(null);
