import { signal } from "@preact/signals";

/** What must be said although the form that it is about has left the screen; null where nothing is. */
export const notice = signal<string | null>(null);
