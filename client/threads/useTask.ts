import { useEffect, useRef, useState } from "preact/hooks";
import { asking } from "./ask.ts";
import { Asker, type Worked } from "./asker.ts";
import type { Question, Reply, TaskName } from "./tasks.ts";

/**
 * Puts a question to another thread: one at a time, the newest waits, the last reply stays.
 *
 * @param task - what is to be done
 * @param question - plain data, the same object while nothing changed; null asks nothing
 * @param failed - the reply where the thread itself fails
 * @returns the last reply and whether another is being worked out
 */
export function useTask<N extends TaskName, Q extends Question<N>>(
  task: N,
  question: Q | null,
  failed: Reply<N>,
): Worked<Q, Reply<N>> {
  const asker = useRef<Asker<Q, Reply<N>> | null>(null);
  const [state, setState] = useState<Worked<Q, Reply<N>>>({ reply: null, asked: null, busy: true });
  useEffect(() => {
    const made = new Asker<Q, Reply<N>>(asking(task), setState, failed);
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
