import type { Browser, CDPSession, Page } from "playwright-core";
import type { CrowdedBook } from "./dragBook.ts";
import { watchedNetwork } from "./stillness.ts";
import { median, percentile } from "./timing.ts";

const SCREEN = { width: 1440, height: 900 };
const MOVES = 160;
/** The first moves, while the browser still compiles, are left out. */
const WARM_UP = 40;
const MILLISECONDS = 1000;
/** Share of the readings that must lie within the axes: those beyond are not drawn. */
const LEAST_SHOWN = 0.9;
const P95 = 0.95;

/** A median and a 95th percentile [s]. */
export interface Spread {
  readonly median: number;
  readonly p95: number;
}

/** How long the moves of a drag took. */
export interface Moves {
  /** that changed the handle's value */
  readonly moves: number;
  /** from the start of the handle's event until model, redraw, style and layout are done, forced [s] */
  readonly work: Spread;
  /** from the same start until the browser goes on to the next task after that frame's paint [s] */
  readonly painted: Spread;
  /** processor time of the page's thread a move, whatever else the machine does: script, style, layout and paint [s] */
  readonly processor: number;
}

export interface DragTimes extends Moves {
  readonly curves: number;
  readonly readings: number;
}

interface Marks {
  readonly work: number[];
  readonly painted: number[];
}

/** Runs in the page: on every input event notes when work and paint are done [ms]. */
function listen(): void {
  const marks: Marks = { work: [], painted: [] };
  Object.assign(window, { dragMarks: marks });
  let start = 0;
  addEventListener("input", () => (start = performance.now()), { capture: true });
  addEventListener("input", () => {
    const began = start;
    queueMicrotask(() => {
      document.body.getBoundingClientRect();
      marks.work.push(performance.now() - began);
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => marks.painted.push(performance.now() - began);
        port2.postMessage(null);
      });
    });
  });
}

/** Drags the thumb to and fro, a pixel a frame. */
async function drag(page: Page): Promise<void> {
  const slider = page.locator("[data-handle=gap] input[type=range]");
  await slider.scrollIntoViewIfNeeded();
  const box = await slider.boundingBox();
  if (!box) throw new Error("The slider of the gap is not on the screen.");
  const frame = () => page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
  const reach = 0.3 * box.width;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down();
  for (let i = 0; i < MOVES; i++) {
    const swing = Math.abs((((2 * i) / reach) % 2) - 1);
    await page.mouse.move(middle.x + reach * (swing - 0.5), middle.y);
    await frame();
  }
  await page.mouse.up();
}

/** @returns processor time that the page's thread has used so far [s] */
async function threadTime(session: CDPSession): Promise<number> {
  const { metrics } = await session.send("Performance.getMetrics");
  return metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN;
}

const spread = (milliseconds: readonly number[]): Spread => ({
  median: median(milliseconds) / MILLISECONDS,
  p95: percentile(milliseconds, P95) / MILLISECONDS,
});

/** Drags the gap's handle of a page that stands still. */
export async function timedMoves(page: Page, session: CDPSession): Promise<Moves> {
  await page.evaluate(listen);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  const before = await threadTime(session);
  await drag(page);
  const used = (await threadTime(session)) - before;
  const marks = await page.evaluate(() => (window as unknown as { dragMarks: Marks }).dragMarks);
  const [work, painted] = [marks.work.slice(WARM_UP), marks.painted.slice(WARM_UP)];
  return { moves: work.length, work: spread(work), painted: spread(painted), processor: used / MOVES };
}

/** Drags the handle of the gap in Match with other builds laid over and all readings shown. */
export async function timedDrag(browser: Browser, address: string, book: CrowdedBook): Promise<DragTimes> {
  const context = await browser.newContext({ baseURL: address, viewport: SCREEN, serviceWorkers: "block" });
  const page = await context.newPage();
  const still = watchedNetwork(page);
  await page.goto(book.path);
  await page.locator("main h1").first().waitFor();
  await still();
  const shown = await page.locator(".match-picture .layer-marks .chart-mark").first().getAttribute("d");
  const laid = await page.locator(".match-picture .chart-ring.lettered").count();
  const crosses = (shown ?? "").split("M").length - 1;
  if (crosses < LEAST_SHOWN * book.readings || laid !== book.curves - 1)
    throw new Error(`Match shows ${crosses} readings and ${laid} builds laid over.`);
  const moves = await timedMoves(page, await context.newCDPSession(page));
  await context.close();
  return { curves: book.curves, readings: crosses, ...moves };
}
