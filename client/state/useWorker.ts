import { useEffect, useRef, useState } from "preact/hooks";

export interface Worked<Question, Reply> {
  /** the last one that came; it stays while the next is worked out */
  readonly reply: Reply | null;
  /** what that reply answers */
  readonly asked: Question | null;
  readonly busy: boolean;
}

/** What a browser gives to ask in another thread: {@link Worker}, or a stand-in. */
export type Thread = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

/** Asks one question at a time and keeps only the newest that waits, so that a handle is never outrun. */
export class Asker<Question, Reply> {
  private waiting: { readonly question: Question } | null = null;
  private asked: Question | null = null;
  private busy = false;

  constructor(
    private readonly thread: Thread,
    heard: (worked: Worked<Question, Reply>) => void,
    failed: Reply,
  ) {
    const take = (reply: Reply) => {
      const { asked, waiting: next } = this;
      this.busy = false;
      this.waiting = null;
      if (next) this.ask(next.question);
      heard({ reply, asked, busy: this.busy });
    };
    this.thread.onmessage = (event: MessageEvent<Reply>) => take(event.data);
    this.thread.onerror = () => take(failed);
  }

  ask(question: Question): void {
    if (this.busy) {
      this.waiting = { question };
      return;
    }
    this.busy = true;
    this.asked = question;
    this.thread.postMessage(question);
  }

  /** Nothing that waits is asked any more; what is being worked out still comes. */
  drop(): void {
    this.waiting = null;
  }

  end(): void {
    this.thread.terminate();
  }
}

/**
 * Puts a question to a thread of its own: one at a time, the newest waits, the last reply stays.
 *
 * @param start - makes the thread: `() => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" })`
 * @param question - plain data, the same object while nothing changed; null asks nothing
 * @param failed - the reply where the thread itself fails
 * @returns the last reply and whether another is being worked out
 */
export function useWorker<Question, Reply>(
  start: () => Thread,
  question: Question | null,
  failed: Reply,
): Worked<Question, Reply> {
  const asker = useRef<Asker<Question, Reply> | null>(null);
  const [state, setState] = useState<Worked<Question, Reply>>({ reply: null, asked: null, busy: true });
  useEffect(() => {
    const made = new Asker<Question, Reply>(start(), setState, failed);
    asker.current = made;
    return () => {
      asker.current = null;
      made.end();
    };
  }, []);
  useEffect(() => {
    if (question === null) {
      asker.current?.drop();
      return;
    }
    setState((before) => ({ ...before, busy: true }));
    asker.current?.ask(question);
  }, [question]);
  return state;
}
