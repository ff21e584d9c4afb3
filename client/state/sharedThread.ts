import { effect, type ReadonlySignal, signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { Asker, type Thread, type Worked } from "./useWorker.ts";

/** A thread that answers one question for whoever on the page asks it; it runs while anybody does. */
export class SharedThread<Question, Reply> {
  readonly #worked = signal<Worked<Question, Reply>>({ reply: null, asked: null, busy: true });
  #users = 0;
  #end = () => {};

  /**
   * @param start - makes the thread
   * @param question - plain data, the same object while nothing changed; null asks nothing
   * @param failed - the reply where the thread itself fails
   */
  constructor(
    private readonly start: () => Thread,
    private readonly question: ReadonlySignal<Question | null>,
    private readonly failed: Reply,
  ) {}

  /** The last reply, and whether another is being worked out. */
  get worked(): ReadonlySignal<Worked<Question, Reply>> {
    return this.#worked;
  }

  /** @returns what ends this use; the last one ends the thread */
  use(): () => void {
    if (this.#users++ === 0) this.#begin();
    return () => {
      if (--this.#users === 0) this.#end();
    };
  }

  #begin(): void {
    const worked = this.#worked;
    const asker = new Asker<Question, Reply>(
      this.start(),
      (heard) => {
        worked.value = heard;
      },
      this.failed,
    );
    const stop = effect(() => {
      const question = this.question.value;
      if (question === null) return asker.drop();
      worked.value = { ...worked.peek(), busy: true };
      asker.ask(question);
    });
    this.#end = () => {
      stop();
      asker.end();
    };
  }
}

/** Keeps a shared thread running while a component is on the page. @returns its last reply */
export function useShared<Question, Reply>(thread: SharedThread<Question, Reply>): Worked<Question, Reply> {
  useEffect(() => thread.use(), [thread]);
  return thread.worked.value;
}
