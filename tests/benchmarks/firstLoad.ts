import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";

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
const isWorker = (url: string) => /worker/i.test(url.split("/").pop() ?? "");

/** Opens Match in a browser that has nothing kept, waits until nothing more is asked for, and weighs the script that came. */
export async function firstLoad(browser: Browser, address: string): Promise<FirstLoad> {
  const context = await browser.newContext({ baseURL: address });
  const page = await context.newPage();
  const bodies: Promise<readonly [string, number]>[] = [];
  page.on("response", (response) => {
    if (!/javascript/.test(response.headers()["content-type"] ?? "")) return;
    bodies.push(response.body().then((body) => [response.url(), gzipSync(body).length] as const));
  });
  await page.goto("/match");
  await page.locator("main h1").first().waitFor();
  await page.waitForLoadState("networkidle");
  await page.waitForTimeout(LATE);
  const files = await Promise.all(bodies);
  await context.close();
  const weight = (some: typeof files) => some.reduce((sum, [, bytes]) => sum + bytes, 0) / BYTES_PER_KILOBYTE;
  const own = files.filter(([url]) => !isWorker(url));
  return {
    script: weight(own),
    scriptFiles: own.length,
    workers: weight(files.filter(([url]) => isWorker(url))),
  };
}
