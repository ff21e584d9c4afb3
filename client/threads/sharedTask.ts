import { effect, type ReadonlySignal, signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { behindPaint } from "../state/behindPaint.ts";
import type { Asking } from "./ask.ts";
import { Asker, type Worked } from "./asker.ts";

/** A question that another thread answers for whoever on the page asks it; it is put while anybody does. */
export class SharedTask<Question, Reply> {
  readonly #worked = signal<Worked<Question, Reply>>({ reply: null, asked: null, busy: true });
  readonly #begun = signal(false);
  #users = 0;
  #end = () => {};

  /**
   * @param thread - answers it
   * @param question - plain data, the same object while nothing changed; null asks nothing
   * @param failed - the reply where the thread itself fails
   * @param ahead - works out what the question is costly to make of, before it is looked at; given up once it isn't wanted
   */
  constructor(
    private readonly thread: Asking<Question, Reply>,
    private readonly question: ReadonlySignal<Question | null>,
    private readonly failed: Reply,
    private readonly ahead: ((isWanted: () => boolean) => Promise<unknown>) | null = null,
  ) {}

  /** The last reply, and whether another is being worked out. */
  get worked(): ReadonlySignal<Worked<Question, Reply>> {
    return this.#worked;
  }

  /** false until somebody on the page has used it, which is after what it is asked for was painted once */
  get begun(): ReadonlySignal<boolean> {
    return this.#begun;
  }

  /** @returns what ends this use; with the last one nothing is asked any more */
  use(): () => void {
    if (this.#users++ === 0) this.#begin();
    return () => {
      if (--this.#users === 0) this.#end();
    };
  }

  #begin(): void {
    if (this.ahead === null) {
      this.#ask();
      return;
    }
    let isWanted = true;
    this.#end = () => {
      isWanted = false;
    };
    void this.ahead(() => isWanted).then(() => isWanted && this.#ask());
  }

  #ask(): void {
    this.#begun.value = true;
    const worked = this.#worked;
    const asker = new Asker<Question, Reply>(
      this.thread,
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

/** Keeps a shared question asked while a component is on the page, from when it was painted. @returns its last reply */
export function useShared<Question, Reply>(task: SharedTask<Question, Reply>): Worked<Question, Reply> {
  useEffect(() => {
    let end = () => {};
    const giveUp = behindPaint(() => {
      end = task.use();
    });
    return () => {
      giveUp();
      end();
    };
  }, [task]);
  return task.worked.value;
}
