/** A function that knows the answers it gave last. */
export interface Remembered<Q, A> {
  (question: Q): A;
  /** whether the question's answer is known, so that asking costs nothing */
  readonly knows: (question: Q) => boolean;
  /** takes an answer that was worked out elsewhere, by the same function */
  readonly learn: (question: Q, answer: A) => void;
}

/**
 * A costly answer, kept for questions that come again word for word: the book changes with every saved note, most answers don't.
 *
 * @param answer - depends on its question alone; the question is plain data
 * @param most - answers kept, the longest unasked goes first
 * @returns the same function, answering a known question with the answer that was given before
 * @throws whatever `answer` throws, each time anew
 */
export function remembered<Q, A>(answer: (question: Q) => A, most: number): Remembered<Q, A> {
  const known = new Map<string, { readonly answer: A }>();
  const keep = (key: string, found: { readonly answer: A }) => {
    known.delete(key);
    known.set(key, found);
    const [oldest] = known.keys();
    if (known.size > most && oldest !== undefined) known.delete(oldest);
    return found.answer;
  };
  const ask = (question: Q) => {
    const key = JSON.stringify(question);
    return keep(key, known.get(key) ?? { answer: answer(question) });
  };
  return Object.assign(ask, {
    knows: (question: Q) => known.has(JSON.stringify(question)),
    learn: (question: Q, given: A) => void keep(JSON.stringify(question), { answer: given }),
  });
}
