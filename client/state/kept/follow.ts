import { effect } from "@preact/signals";
import { bookAsOf, currentBook, currentUnits, isDemo, shelfNow, testCount } from "../book.ts";
import { keepBook } from "./keptBook.ts";

/** A book that changes again at once is kept once [ms]. */
const A_WHILE = 1_000;

/** Keeps the book on this device as it is shown, as long as it is the server's. */
export function startKeeping(): void {
  let soon: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const [book, units, demo, count] = [currentBook.value, currentUnits.value, isDemo.value, testCount.value];
    clearTimeout(soon);
    if (!book || bookAsOf.value !== null) return;
    const keep = () =>
      keepBook({ book, shelf: shelfNow(), units, isDemo: demo, testCount: count, at: Date.now() });
    soon = setTimeout(() => void keep(), A_WHILE);
  });
}
