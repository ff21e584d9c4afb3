import type { Store } from "../store/store.ts";
import type { Threads } from "../threads/threads.ts";

/** So many answers are kept, the longest unasked goes first; so many of them are worked out ahead after a change. */
const [MOST, MOST_AHEAD] = [64, 16];

/** An answer as bytes of JSON, with a short text that tells what it was worked out from. */
interface Kept {
  readonly from: string;
  readonly text: Uint8Array;
}

/** The same; without text where an answer from just that is known already. */
export interface Found {
  readonly from: string;
  readonly text: Uint8Array | null;
}

/** Works an answer out, unless it would be from what is known. */
type Work = (known: string | null) => Promise<Found>;

/** What it takes to answer from the book. */
export interface Answering {
  readonly store: Store;
  readonly threads: Threads;
  readonly answers: BookAnswers;
}

/**
 * Answers that are worked out from the book and asked for again and again. After any change each is looked at anew: it
 * stays where it would come from the very same, and is worked out where it wouldn't.
 */
export class BookAnswers {
  readonly #now = new Map<string, Promise<Kept>>();
  /** what was answered last, whatever the book is by now */
  readonly #last = new Map<string, { readonly kept: Kept; readonly work: Work }>();

  constructor(private readonly store: Store) {
    const forget = () => this.#now.clear();
    store.feed.subscribe({ next: forget, end: forget });
  }

  /**
   * @param key - what is asked
   * @param work - works it out, for whoever asks the same meanwhile as well
   * @throws whatever `work` throws; the next who asks has it worked out anew
   */
  async of(key: string, work: Work): Promise<Uint8Array> {
    const kept = await this.#answer(key, work);
    this.#last.delete(key);
    this.#last.set(key, { kept, work });
    const [oldest] = this.#last.keys();
    if (this.#last.size > MOST && oldest !== undefined) this.#drop(oldest);
    return kept.text;
  }

  /** Brings what was asked last up to date, one after the other, until it is given up. What has no answer any more is dropped. */
  async refresh(signal: AbortSignal): Promise<void> {
    for (const [key, { work }] of [...this.#last].reverse().slice(0, MOST_AHEAD)) {
      if (signal.aborted) return;
      try {
        const kept = await this.#answer(key, work);
        if (this.#last.has(key)) this.#last.set(key, { kept, work });
      } catch (error) {
        if (!(error instanceof Error)) throw error;
        this.#drop(key);
      }
    }
  }

  #answer(key: string, work: Work): Promise<Kept> {
    this.store.lookForOthers();
    const answer = this.#now.get(key) ?? this.#made(key, work);
    this.#now.set(key, answer);
    answer.catch(() => this.#now.get(key) === answer && this.#now.delete(key));
    return answer;
  }

  async #made(key: string, work: Work): Promise<Kept> {
    const last = this.#last.get(key)?.kept ?? null;
    const { from, text } = await work(last?.from ?? null);
    const kept = text ? { from, text } : last;
    if (kept?.from !== from) throw new Error(`No answer to ${key} is known from ${from}.`);
    return kept;
  }

  #drop(key: string): void {
    this.#last.delete(key);
    this.#now.delete(key);
  }
}
