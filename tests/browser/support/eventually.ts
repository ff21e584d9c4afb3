import { expect } from "vitest";

/** How long a loaded machine may take until the screen shows what an action led to. */
export const PATIENCE = 120_000;

/**
 * An expectation of what the screen comes to show: read again until it holds.
 *
 * @param read - reads it off the page
 * @param what - named where it fails
 * @returns the expectation; await its matcher
 */
export const eventually = <T>(read: () => T | Promise<T>, what?: string) =>
  expect.poll(read, { timeout: PATIENCE, message: what });
