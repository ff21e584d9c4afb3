import { effect } from "@preact/signals";
import { bookAsOf, currentBook, currentUnits, isDemo } from "../book.ts";
import { keepBook } from "./keptBook.ts";

/** A book that changes again at once is kept once [ms]. */
const A_WHILE = 1_000;

/** Keeps the book on this device as it is shown, as long as it is the server's. */
export function startKeeping(): void {
  let soon: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const [book, units, demo] = [currentBook.value, currentUnits.value, isDemo.value];
    clearTimeout(soon);
    if (!book || bookAsOf.value !== null) return;
    soon = setTimeout(() => void keepBook({ book, units, isDemo: demo, at: Date.now() }), A_WHILE);
  });
}
