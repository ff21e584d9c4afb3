import type { Book } from "../../shared/book/book.ts";
import type { Store } from "./store.ts";

/** @returns what reads the whole book, once for each state of it, whoever wrote that state */
export function currentBook(store: Store): () => Book {
  let kept: Book | null = null;
  store.feed.subscribe({
    next: () => {
      kept = null;
    },
    end: () => {
      kept = null;
    },
  });
  return () => {
    store.lookForOthers();
    // What lies in the store went through the schemas when it was written.
    const book = kept ?? (store.dump().records as unknown as Book);
    kept = book;
    return book;
  };
}
