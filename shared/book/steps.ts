/** Work in steps, so that what else waits for the same thread may have its turn between them; it returns what it comes to. */
export type Steps<T> = Generator<void, T>;

/** @returns what the steps come to, done one after another */
export function atOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
