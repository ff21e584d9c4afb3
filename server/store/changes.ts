import type { ChangeEvent } from "../../shared/model/api/book.ts";

interface Listener {
  next(change: ChangeEvent): void;
  end(): void;
}

/** Tells whoever listens what was written, after the write is on the disk. */
export class ChangeFeed {
  readonly #listeners = new Set<Listener>();
  #count = 0;

  /** how often it told of a write */
  get count(): number {
    return this.#count;
  }

  /** @returns a function that ends the subscription */
  subscribe(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  publish(change: ChangeEvent): void {
    this.#count++;
    for (const listener of this.#listeners) listener.next(change);
  }

  close(): void {
    for (const listener of this.#listeners) listener.end();
    this.#listeners.clear();
  }
}
