import {
  type Browser,
  type BrowserContextOptions,
  chromium,
  type LaunchOptions,
  type Page,
} from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";
import { PATIENCE } from "./eventually.ts";

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
}

/**
 * A browser for the tests of one file. Any error on a page's console fails the test that opened it.
 *
 * @returns a way to open pages; they are closed after each test
 */
export function useScreens({ launch, server }: ScreensOptions = {}): Screens {
  let browser: Browser | null = null;
  let said: string[] = [];
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: inject("chromium"), args: ARGUMENTS, ...launch });
  });
  afterEach(async () => {
    await Promise.all((browser?.contexts() ?? []).map((context) => context.close()));
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
      ...options,
      baseURL: server?.address ?? inject("address"),
    });
    context.setDefaultTimeout(PATIENCE);
    const page = await context.newPage();
    page.on("pageerror", (error) => said.push(String(error)));
    page.on("console", (message) => {
      const counts = message.type() === "error" || message.type() === "warning";
      if (counts && !allowed?.test(message.text())) said.push(message.text());
    });
    await page.goto(path);
    await page.locator("main h1").first().waitFor();
    return page;
  };
  return { open };
}
