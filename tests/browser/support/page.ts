import { fileURLToPath } from "node:url";
import type { LaunchOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";
import { browserFor, type UsedBrowser } from "./browser.ts";
import { type ContextOptions, type Contexts, contextsIn } from "./contexts.ts";

/** What the browser's driver itself says where it keeps a page from having a service worker. */
const BLOCKED = /Service Worker registration blocked/;

export const LAPTOP = { width: 1440, height: 900 } as const;
export const PHONE = { width: 390, height: 844 } as const;
/** A laptop of 1280 px zoomed in four times, where a page must still be read without scrolling sideways: WCAG 2.2, 1.4.10. */
export const ZOOMED = { width: 320, height: 568 } as const;

export interface OpenOptions extends ContextOptions {
  /** what the console may say in this test, such as the browser's own line on a refused request */
  readonly allowed?: RegExp;
}

export interface Screens {
  /** Opens an address of the app in a browser that remembers nothing and waits until the bench book is read. */
  readonly open: (path: string, options?: OpenOptions) => Promise<Page>;
}

export interface ScreensOptions {
  /** what the browser is started with besides */
  readonly launch?: LaunchOptions;
  /** the server whose pages are opened: the one that all read, unless given */
  readonly server?: { readonly address: string };
  /** the last screen of every test is kept, not only of one that failed */
  readonly keep?: boolean;
}

/** Where a run leaves its screens, outside the repository. */
const SCREENS = fileURLToPath(new URL("../../../.build/screens/", import.meta.url));
const MOST_LETTERS = 90;

async function keepScreens(pages: readonly Page[], test: string): Promise<void> {
  const name = test
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, MOST_LETTERS);
  await Promise.all(pages.map((page, i) => page.screenshot({ path: `${SCREENS}${name}-${i + 1}.png` })));
}

/**
 * A browser for the tests of one file. Any error on a page's console fails the test that opened it.
 *
 * @returns a way to open pages; they are closed after each test
 */
export function useScreens({ launch, server, keep = false }: ScreensOptions = {}): Screens {
  let used: UsedBrowser | null = null;
  let contexts: Contexts | null = null;
  let said: string[] = [];
  beforeAll(async () => {
    used = await browserFor(launch);
  });
  afterEach(async ({ task }) => {
    if (keep || task.result?.state === "fail") await keepScreens((await contexts?.pages()) ?? [], task.name);
    await contexts?.clear();
    const heard = said;
    said = [];
    expect(heard, "errors on the browser's console").toEqual([]);
  });
  afterAll(async () => {
    await contexts?.close();
    await used?.leave();
  });
  const open = async (path: string, { allowed, ...options }: OpenOptions = {}) => {
    if (!used) throw new Error("Pages are opened inside a test.");
    contexts ??= contextsIn(used.browser, {
      viewport: LAPTOP,
      reducedMotion: "reduce",
      // Tests that need one say so: it would fetch the whole client for each of all these contexts.
      serviceWorkers: "block",
      baseURL: server?.address ?? inject("address"),
    });
    const page = await contexts.newPage(options);
    page.on("pageerror", (error) => said.push(String(error)));
    page.on("console", (message) => {
      const counts = message.type() === "error" || message.type() === "warning";
      const isOurs = counts && !BLOCKED.test(message.text());
      if (isOurs && !allowed?.test(message.text())) said.push(message.text());
    });
    await page.goto(path);
    await page.locator("main h1").first().waitFor();
    return page;
  };
  return { open };
}
