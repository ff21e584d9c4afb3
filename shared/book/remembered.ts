/**
 * A costly answer, kept for questions that come again word for word: the book changes with every saved note, most answers don't.
 *
 * @param answer - depends on its question alone; the question is plain data
 * @param most - answers kept, the longest unasked goes first
 * @returns the same function, answering a known question with the answer that was given before
 * @throws whatever `answer` throws, each time anew
 */
export function remembered<Q, A>(answer: (question: Q) => A, most: number): (question: Q) => A {
  const known = new Map<string, { readonly answer: A }>();
  return (question) => {
    const key = JSON.stringify(question);
    const found = known.get(key) ?? { answer: answer(question) };
    known.delete(key);
    known.set(key, found);
    const [oldest] = known.keys();
    if (known.size > most && oldest !== undefined) known.delete(oldest);
    return found.answer;
  };
}
