import type { Page, Request } from "playwright-core";

/** So long nothing is asked for until a page counts as still, and how long is waited at most [ms]. */
const [QUIET, PATIENCE] = [500, 60_000];
const STEP = 50;

/** @returns whether an address is that of a worker's script */
export const isWorker = (url: string): boolean => /worker/i.test(url.split("/").pop() ?? "");

/** Streams stay open; of a worker's script the browser reports no end. */
const isEndless = (request: Request) => request.resourceType() === "eventsource" || isWorker(request.url());

/**
 * Watches what a page asks for, from before it is opened.
 *
 * @returns waits until nothing but event streams and workers has been under way for half a second
 */
export function watchedNetwork(page: Page): () => Promise<void> {
  const underWay = new Set<Request>();
  let last = performance.now();
  const note = (change: (request: Request) => void) => (request: Request) => {
    if (isEndless(request)) return;
    change(request);
    last = performance.now();
  };
  page.on(
    "request",
    note((request) => underWay.add(request)),
  );
  page.on(
    "requestfailed",
    note((request) => underWay.delete(request)),
  );
  page.on(
    "requestfinished",
    note((request) => underWay.delete(request)),
  );
  return async () => {
    const end = performance.now() + PATIENCE;
    while (underWay.size > 0 || performance.now() - last < QUIET) {
      if (performance.now() > end)
        throw new Error(
          `Still under way after a minute: ${[...underWay].map((request) => request.url()).join(", ") || "new requests"}.`,
        );
      await page.waitForTimeout(STEP);
    }
  };
}
