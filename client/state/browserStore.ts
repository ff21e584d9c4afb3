/**
 * Uses the browser's store. It may refuse altogether, or be full: nothing is kept then, and nothing breaks.
 *
 * @param otherwise - what is returned where it refuses
 */
export function tried<T>(use: () => T, otherwise: T): T {
  try {
    return use();
  } catch (error) {
    if (error instanceof DOMException) return otherwise;
    throw error;
  }
}
