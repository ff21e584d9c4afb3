import { type Browser, chromium } from "playwright-core";
import { findChromium } from "#tests/browser/support/chromium.ts";
import { type DragTimes, timedDrag } from "./dragBench.ts";
import { crowdedBook } from "./dragBook.ts";
import { type FeltTimes, timedFelt } from "./feltBench.ts";
import { type FirstLoad, firstLoad } from "./firstLoad.ts";
import { withServer } from "./site.ts";

const ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"];

export interface ScreenTimes {
  /** null where no browser is found */
  readonly drag: DragTimes | null;
  readonly firstLoad: FirstLoad | null;
  readonly felt: FeltTimes | null;
  /** why there is none */
  readonly missing: string | null;
}

async function measured(browser: Browser): Promise<ScreenTimes> {
  return withServer(async ({ address }) => {
    const loaded = await firstLoad(browser, address);
    const felt = await timedFelt(browser, address);
    const drag = await timedDrag(browser, address, await crowdedBook(address));
    return { drag, firstLoad: loaded, felt, missing: null };
  });
}

function browserProgram(): { readonly program: string } | { readonly missing: string } {
  try {
    return { program: findChromium() };
  } catch (error) {
    if (error instanceof Error) return { missing: error.message };
    throw error;
  }
}

/** What a browser needs of the built client: script at the first load, a frame while a handle is dragged, and how long one waits. */
export async function timedScreen(): Promise<ScreenTimes> {
  const found = browserProgram();
  if ("missing" in found) return { drag: null, firstLoad: null, felt: null, missing: found.missing };
  const browser = await chromium.launch({ executablePath: found.program, args: ARGUMENTS });
  try {
    return await measured(browser);
  } finally {
    await browser.close();
  }
}
