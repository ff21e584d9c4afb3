import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { PATIENCE } from "./eventually.ts";

/** Small, and nothing of the app. */
const QUIET_PAGE = "/api/v1/health";

/** All that a browser remembers of an origin from page to page but the app's own files. */
const REMEMBERED = "cookies,local_storage,indexeddb,cache_storage,service_workers,file_systems,websql";

/** The origin of about:blank. */
const NONE = "null";

/** Contexts of one test file. */
export interface Contexts {
  /** A page in a context that nothing was done in, or that nothing is left in of what was. */
  readonly newPage: (options: ContextOptions) => Promise<Page>;
  /** the pages that are open, but for the quiet one */
  readonly pages: () => Promise<Page[]>;
  /** Closes every page and forgets what they left. */
  readonly clear: () => Promise<void>;
  readonly close: () => Promise<void>;
}

export interface ContextOptions extends BrowserContextOptions {
  /** a context of its own: for a test that turns the clock, which is a context's */
  readonly alone?: boolean;
}

const isPlain = ({ alone, viewport: _size, ...others }: ContextOptions): boolean =>
  !alone && Object.keys(others).length === 0;

/** The context of pages that ask for nothing special. A quiet page keeps its process, and with it the app's compiled code, between tests. */
class Kept {
  /** where its pages have been */
  readonly #origins = new Set<string>();

  private constructor(
    readonly context: BrowserContext,
    readonly quiet: Page,
    private readonly forget: (origin: string) => Promise<unknown>,
  ) {
    context.on("page", (page) =>
      page.on("framenavigated", (frame) => this.#origins.add(new URL(frame.url()).origin)),
    );
  }

  static async in(context: BrowserContext): Promise<Kept> {
    const quiet = await context.newPage();
    await quiet.goto(QUIET_PAGE);
    const session = await context.newCDPSession(quiet);
    const forget = (origin: string) =>
      session.send("Storage.clearDataForOrigin", { origin, storageTypes: REMEMBERED });
    return new Kept(context, quiet, forget);
  }

  pages(): Page[] {
    return this.context.pages().filter((page) => page !== this.quiet);
  }

  async clear(): Promise<void> {
    await Promise.all(this.pages().map((page) => page.close()));
    const been = [...this.#origins].filter((origin) => origin !== NONE);
    this.#origins.clear();
    await Promise.all(been.map(this.forget));
  }
}

/**
 * @param browser - may be used by others as well
 * @param common - what every context of the file is told
 */
export function contextsIn(browser: Browser, common: BrowserContextOptions): Contexts {
  const made = async (options: BrowserContextOptions) => {
    const context = await browser.newContext({ ...common, ...options });
    context.setDefaultTimeout(PATIENCE);
    return context;
  };
  let kept: Promise<Kept> | null = null;
  let own: BrowserContext[] = [];
  const ownPage = async ({ alone: _own, ...options }: ContextOptions) => {
    const context = await made(options);
    own.push(context);
    return context.newPage();
  };
  const plainPage = async (options: ContextOptions) => {
    kept ??= made({}).then(Kept.in);
    const standing = await kept;
    // Two pages that are open side by side know nothing of one another.
    if (standing.pages().length > 0) return ownPage(options);
    await standing.clear();
    const page = await standing.context.newPage();
    if (options.viewport) await page.setViewportSize(options.viewport);
    return page;
  };
  const closeOwn = async () => {
    const over = own;
    own = [];
    await Promise.all(over.map((context) => context.close()));
  };
  return {
    newPage: (options) => (isPlain(options) ? plainPage(options) : ownPage(options)),
    pages: async () => [...((await kept)?.pages() ?? []), ...own.flatMap((context) => context.pages())],
    clear: async () => {
      await Promise.all([(await kept)?.clear(), closeOwn()]);
    },
    close: async () => {
      await Promise.all([(await kept)?.context.close(), closeOwn()]);
    },
  };
}
