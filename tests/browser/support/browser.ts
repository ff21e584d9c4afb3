import { type Browser, chromium, type LaunchOptions } from "playwright-core";
import { inject } from "vitest";

export const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // No process for drawing alone, and one for all pages of a context: what they share is compiled once.
  "--in-process-gpu",
  "--process-per-site",
];

const launched = (options: LaunchOptions = {}): Promise<Browser> =>
  chromium.launch({ executablePath: inject("chromium"), args: ARGUMENTS, ...options });

/** The browser of all files of a process that ask for nothing special; it ends with the process. */
let shared: Promise<Browser> | null = null;

/** A browser that a file may use, and what the file does once it has done with it. */
export interface UsedBrowser {
  readonly browser: Browser;
  readonly leave: () => Promise<void>;
}

/** @param launch - what it is started with besides; such a browser is the file's own */
export async function browserFor(launch?: LaunchOptions): Promise<UsedBrowser> {
  if (launch) {
    const browser = await launched(launch);
    return { browser, leave: () => browser.close() };
  }
  shared ??= launched();
  return { browser: await shared, leave: () => Promise.resolve() };
}
