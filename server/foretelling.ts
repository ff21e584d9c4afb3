import { setTimeout as pause } from "node:timers/promises";
import { foretell } from "../shared/book/record/foretell.ts";
import type { Foretold } from "../shared/model/api/record.ts";
import type { Debt } from "./store/owed.ts";
import { patiently } from "./store/patience.ts";
import type { Store } from "./store/store.ts";
import { loggedIn } from "./threads/bookIn.ts";
import { type Threads, TooBusyError } from "./threads/threads.ts";

/** A prediction that is owed, for a thread. */
export interface ForetellAsked {
  readonly file: string;
  readonly debt: Debt;
}

/** @returns what the book in a file predicted for a test at the moment of its writing */
export function foretoldIn({ file, debt }: ForetellAsked): Foretold[] {
  const { book, logged } = loggedIn(file, debt);
  return foretell(book, logged);
}

/** Threads that are busy are asked again after so long [ms]. */
const WHILE_BUSY = 500;
/** How often one who waits looks whether all is worked off [ms]. */
const LOOK = 20;

/** Works off the predictions that are owed to tests, one after the other, behind the requests that wrote them. */
export class Foretelling {
  readonly #gone = new AbortController();
  #isAtWork = false;

  /** Begins with what is owed from before; ends with the store's feed. */
  constructor(
    private readonly store: Store,
    private readonly threads: Threads,
    private readonly log: (error: unknown) => void,
  ) {
    store.feed.subscribe({
      next: ({ collection }) => collection === "tests" && this.#begin(),
      end: () => this.#gone.abort(),
    });
    this.#begin();
  }

  /**
   * Waits until all is worked off that is owed now.
   *
   * @param patience - no longer than this [ms]
   * @param signal - gives it up
   */
  async settled(patience: number, signal?: AbortSignal): Promise<void> {
    const end = performance.now() + patience;
    const { owed } = this.store;
    const last = owed.last() ?? 0;
    const isOwed = () => (owed.first()?.seq ?? Number.POSITIVE_INFINITY) <= last;
    while (!signal?.aborted && !this.#isOver && performance.now() < end && isOwed()) await pause(LOOK);
  }

  get #isOver(): boolean {
    return this.#gone.signal.aborted;
  }

  #begin(): void {
    if (this.#isAtWork) return;
    this.#isAtWork = true;
    this.#workOff()
      .catch((error: unknown) => {
        if (!this.#isOver) this.log(error);
      })
      .finally(() => {
        this.#isAtWork = false;
      });
  }

  async #workOff(): Promise<void> {
    const { store } = this;
    const next = () => patiently(() => (this.#isOver ? null : store.owed.first()));
    for (let debt = await next(); debt; debt = await next()) {
      const owed = debt;
      const rows = await this.#rowsOf(owed);
      if (this.#isOver) return;
      if (rows === "busy") await pause(WHILE_BUSY, undefined, { ref: false });
      else await patiently(() => store.settle(owed, rows));
    }
  }

  /** A test that nothing can be predicted for by a fault of the code keeps none, or it would hold up all others. */
  async #rowsOf(debt: Debt): Promise<Foretold[] | null | "busy"> {
    const { signal } = this.#gone;
    try {
      return await this.threads.run("foretell", { file: this.store.file, debt }, { signal });
    } catch (error) {
      if (error instanceof TooBusyError) return "busy";
      if (!this.#isOver) this.log(error);
      return null;
    }
  }
}
