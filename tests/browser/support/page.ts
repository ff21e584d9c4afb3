import { fileURLToPath } from "node:url";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type LaunchOptions,
  type Page,
} from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";
import { PATIENCE } from "./eventually.ts";

/** What the browser's driver itself says where it keeps a page from having a service worker. */
const BLOCKED = /Service Worker registration blocked/;

const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export const LAPTOP = { width: 1440, height: 900 } as const;
export const PHONE = { width: 390, height: 844 } as const;
/** A laptop of 1280 px zoomed in four times, where a page must still be read without scrolling sideways: WCAG 2.2, 1.4.10. */
export const ZOOMED = { width: 320, height: 568 } as const;

export interface OpenOptions extends BrowserContextOptions {
  /** what the console may say in this test, such as the browser's own line on a refused request */
  readonly allowed?: RegExp;
}

export interface Screens {
  /** Opens an address of the app in a context of its own and waits until the bench book is read. */
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

async function keepScreens(contexts: readonly BrowserContext[], test: string): Promise<void> {
  const name = test
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, MOST_LETTERS);
  const pages = contexts.flatMap((context) => context.pages());
  await Promise.all(pages.map((page, i) => page.screenshot({ path: `${SCREENS}${name}-${i + 1}.png` })));
}

/**
 * A browser for the tests of one file. Any error on a page's console fails the test that opened it.
 *
 * @returns a way to open pages; they are closed after each test
 */
export function useScreens({ launch, server, keep = false }: ScreensOptions = {}): Screens {
  let browser: Browser | null = null;
  let said: string[] = [];
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: inject("chromium"), args: ARGUMENTS, ...launch });
  });
  afterEach(async ({ task }) => {
    const contexts = browser?.contexts() ?? [];
    if (keep || task.result?.state === "fail") await keepScreens(contexts, task.name);
    await Promise.all(contexts.map((context) => context.close()));
    const heard = said;
    said = [];
    expect(heard, "errors on the browser's console").toEqual([]);
  });
  afterAll(async () => {
    await browser?.close();
  });
  const open = async (path: string, { allowed, ...options }: OpenOptions = {}) => {
    if (!browser) throw new Error("Pages are opened inside a test.");
    const context = await browser.newContext({
      viewport: LAPTOP,
      reducedMotion: "reduce",
      // Tests that need one say so: it would fetch the whole client for each of all these contexts.
      serviceWorkers: "block",
      ...options,
      baseURL: server?.address ?? inject("address"),
    });
    context.setDefaultTimeout(PATIENCE);
    const page = await context.newPage();
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
