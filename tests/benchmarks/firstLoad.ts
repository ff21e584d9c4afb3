import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { isWorker, watchedNetwork } from "./stillness.ts";

export interface FirstLoad {
  /** script that the page runs, as each file gzips by itself [kB] */
  readonly script: number;
  readonly scriptFiles: number;
  /** script that its workers run [kB] */
  readonly workers: number;
}

/** Panels below the picture ask for their script a little later [ms]. */
const LATE = 2000;
const BYTES_PER_KILOBYTE = 1000;

/** @returns an address and how many bytes its file takes gzipped by itself */
async function weighed(url: string): Promise<readonly [url: string, bytes: number]> {
  const response = await fetch(url);
  return [url, gzipSync(Buffer.from(await response.arrayBuffer())).length];
}

/** Opens Match in a browser that has nothing kept, waits until nothing more is asked for, and weighs the script that came. */
export async function firstLoad(browser: Browser, address: string): Promise<FirstLoad> {
  const context = await browser.newContext({ baseURL: address });
  const page = await context.newPage();
  const still = watchedNetwork(page);
  await page.goto("/match");
  await page.locator("main h1").first().waitFor();
  await still();
  await page.waitForTimeout(LATE);
  const names = await page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name));
  await context.close();
  const files = await Promise.all([...new Set(names)].filter((name) => /\.js$/.test(name)).map(weighed));
  const weight = (some: typeof files) => some.reduce((sum, [, bytes]) => sum + bytes, 0) / BYTES_PER_KILOBYTE;
  const own = files.filter(([url]) => !isWorker(url));
  return {
    script: weight(own),
    scriptFiles: own.length,
    workers: weight(files.filter(([url]) => isWorker(url))),
  };
}
