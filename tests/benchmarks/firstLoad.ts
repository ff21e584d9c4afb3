import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { isWorker, watchedNetwork } from "./stillness.ts";

export interface FirstLoad {
  /** script that the page runs, as each file gzips by itself [kB] */
  readonly script: number;
  readonly scriptFiles: number;
  /** script that its workers run, what they import included [kB] */
  readonly workers: number;
  /** answers of more than a kilobyte that came uncompressed */
  readonly plain: number;
}

/** Panels below the picture ask for their script a little later [ms]. */
const LATE = 2000;
const BYTES_PER_KILOBYTE = 1000;

/** @returns an address and how many bytes its file takes gzipped by itself */
async function weighed(url: string): Promise<readonly [url: string, bytes: number]> {
  const response = await fetch(url);
  return [url, gzipSync(Buffer.from(await response.arrayBuffer())).length];
}

interface Came {
  readonly name: string;
  /** as sent, and unpacked [bytes] */
  readonly sent: number;
  readonly size: number;
}

/** Runs in the page or in a worker: what it asked for. */
function resources(): Came[] {
  const entries = performance.getEntriesByType("resource") as PerformanceResourceTiming[];
  return entries.map(({ name, encodedBodySize: sent, decodedBodySize: size }) => ({ name, sent, size }));
}

/** @returns scripts among what came: how many, and what they weigh together [kB] */
async function weightOf(came: readonly Came[]): Promise<{ readonly files: number; readonly weight: number }> {
  const names = new Set(came.map(({ name }) => name).filter((name) => /\.js$/.test(name)));
  const files = await Promise.all([...names].map(weighed));
  return {
    files: files.length,
    weight: files.reduce((sum, [, bytes]) => sum + bytes, 0) / BYTES_PER_KILOBYTE,
  };
}

/** Opens Match in a browser that has nothing kept, waits until nothing more is asked for, and weighs the script that came. */
export async function firstLoad(browser: Browser, address: string): Promise<FirstLoad> {
  // What is kept for use without the server comes later, once the page rests.
  const context = await browser.newContext({ baseURL: address, serviceWorkers: "block" });
  const page = await context.newPage();
  const still = watchedNetwork(page);
  await page.goto("/match");
  await page.locator("main h1").first().waitFor();
  await still();
  await page.waitForTimeout(LATE);
  const came = await page.evaluate(resources);
  const imported = await Promise.all(page.workers().map((worker) => worker.evaluate(resources)));
  await context.close();
  const own = await weightOf(came.filter(({ name }) => !isWorker(name)));
  const workers = await weightOf([...imported.flat(), ...came.filter(({ name }) => isWorker(name))]);
  const plain = came.filter(({ sent, size }) => size > BYTES_PER_KILOBYTE && sent >= size).length;
  return { script: own.weight, scriptFiles: own.files, workers: workers.weight, plain };
}
