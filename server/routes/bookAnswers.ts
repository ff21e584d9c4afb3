import type { Store } from "../store/store.ts";

/** So many answers are kept, the longest unasked goes first. */
const MOST = 64;

/** Answers that are worked out from the book and asked for again and again: each is kept until anything in the book changes. */
export class BookAnswers<T> {
  readonly #known = new Map<string, Promise<T>>();

  constructor(private readonly store: Store) {
    const forget = () => this.#known.clear();
    store.feed.subscribe({ next: forget, end: forget });
  }

  /**
   * @param key - what is asked
   * @param work - works it out, for whoever asks the same meanwhile as well
   * @throws whatever `work` throws; the next who asks has it worked out anew
   */
  of(key: string, work: () => Promise<T>): Promise<T> {
    this.store.lookForOthers();
    const answer = this.#known.get(key) ?? work();
    this.#known.delete(key);
    this.#known.set(key, answer);
    answer.catch(() => this.#known.get(key) === answer && this.#known.delete(key));
    const [oldest] = this.#known.keys();
    if (this.#known.size > MOST && oldest !== undefined) this.#known.delete(oldest);
    return answer;
  }
}
