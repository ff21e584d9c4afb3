import { useEffect, useRef, useState } from "preact/hooks";
import type { Reply } from "./answer.ts";
import type { Question } from "./question.ts";

export interface Replying {
  /** the last one that came; it stays while the next is worked out */
  readonly reply: Reply | null;
  readonly busy: boolean;
}

const FAILED: Reply = { problem: "The run could not be worked out in this browser; reload the page." };

/** Asks one question at a time and keeps only the newest that waits, so that a handle is never outrun. */
class Asker {
  private readonly worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
  private waiting: Question | null = null;
  private busy = false;

  constructor(heard: (reply: Reply, busy: boolean) => void) {
    const take = (reply: Reply) => {
      this.busy = false;
      const next = this.waiting;
      this.waiting = null;
      if (next) this.ask(next);
      heard(reply, this.busy);
    };
    this.worker.onmessage = (event: MessageEvent<Reply>) => take(event.data);
    this.worker.onerror = () => take(FAILED);
  }

  ask(question: Question): void {
    if (this.busy) this.waiting = question;
    else this.worker.postMessage(question);
    this.busy = true;
  }

  end(): void {
    this.worker.terminate();
  }
}

/** @returns the reply to a question, worked out in a thread of its own */
export function useReply(question: Question | null): Replying {
  const asker = useRef<Asker | null>(null);
  const [state, setState] = useState<Replying>({ reply: null, busy: true });
  useEffect(() => {
    const made = new Asker((reply, busy) => setState({ reply, busy }));
    asker.current = made;
    return () => {
      asker.current = null;
      made.end();
    };
  }, []);
  useEffect(() => {
    if (!question) return;
    setState((before) => ({ ...before, busy: true }));
    asker.current?.ask(question);
  }, [question]);
  return state;
}
