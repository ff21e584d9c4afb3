import type { Asking } from "./ask.ts";

export interface Worked<Question, Reply> {
  /** the last one that came; it stays while the next is worked out */
  readonly reply: Reply | null;
  /** what that reply answers */
  readonly asked: Question | null;
  readonly busy: boolean;
}

/** Asks one question at a time and keeps only the newest that waits, so that a handle is never outrun. */
export class Asker<Question, Reply> {
  private waiting: { readonly question: Question } | null = null;
  private giveUp: (() => void) | null = null;

  /**
   * @param thread - answers
   * @param heard - receives each reply
   * @param failed - the reply where the thread itself fails
   */
  constructor(
    private readonly thread: Asking<Question, Reply>,
    private readonly heard: (worked: Worked<Question, Reply>) => void,
    private readonly failed: Reply,
  ) {
    thread.prepare();
  }

  ask(question: Question): void {
    if (this.giveUp) {
      this.waiting = { question };
      return;
    }
    this.giveUp = this.thread.put(question, (end) => this.receive(question, end ? end.reply : this.failed));
  }

  private receive(asked: Question, reply: Reply): void {
    const next = this.waiting;
    this.waiting = null;
    this.giveUp = null;
    if (next) this.ask(next.question);
    this.heard({ reply, asked, busy: this.giveUp !== null });
  }

  /** Nothing that waits is asked any more; what is being worked out still comes. */
  drop(): void {
    this.waiting = null;
  }

  /** Nothing is wanted any more, nor what is under way. */
  end(): void {
    this.drop();
    this.giveUp?.();
    this.giveUp = null;
  }
}
