import { expect } from "vitest";

/** As long as the browser's own waits: a loaded machine may take that to draw or to work out what was asked. */
const PATIENCE = 30_000;

/**
 * Expects something of what is on a page once it stands there: it is read again until it does.
 *
 * @param read - reads it anew
 * @returns what `expect` returns, to be awaited
 */
export const soon = <T>(read: () => T) => expect.poll(read, { timeout: PATIENCE });
