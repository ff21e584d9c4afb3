import type { Browser, BrowserContext, CDPSession, Page } from "playwright-core";
import { type Moves, timedMoves } from "./dragBench.ts";
import { watchedNetwork } from "./stillness.ts";
import { median } from "./timing.ts";

const SCREEN = { width: 1440, height: 900 };
const VISITS = 3;
const SLOWER = 4;
const MILLISECONDS = 1000;
/** So long nothing on the page changes until it counts as whole, and how long is waited at most [ms]. */
const [UNCHANGED, PATIENCE] = [1500, 90_000];
/** So long a view may take to come [ms]. */
const CHANGE_PATIENCE = 10_000;

/** How long a first visit to Match takes, nothing kept in the browser, all from the start of the navigation [s] */
export interface Arrival {
  /** until the first verdict is painted */
  readonly verdict: number;
  /** until every panel is there and changes no more */
  readonly whole: number;
  /** longest stretch for which the page answered to nothing */
  readonly held: number;
}

/** How fast the demo's Match feels. */
export interface FeltTimes {
  /** medians of a few visits */
  readonly arrival: Arrival;
  readonly slowArrival: Arrival;
  /** from the click on a view until it is painted, the slowest of all: fetched at the first visit, and seen before */
  readonly change: { readonly views: number; readonly first: Slowest; readonly again: Slowest };
  /** the gap's handle dragged on a processor a few times slower */
  readonly slowDrag: Moves;
  readonly slower: number;
}

interface Notes {
  verdict: number | null;
  changed: number;
  held: number;
}

/** Runs in the page before anything else: notes when the verdict is painted, when anything last changed, and what held the page up [ms]. */
function note(): void {
  const notes: Notes = { verdict: null, changed: 0, held: 0 };
  Object.assign(window, { notes });
  const painted = (done: () => void) =>
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = done;
      port2.postMessage(null);
    });
  let seen = false;
  new MutationObserver(() => {
    notes.changed = performance.now();
    if (seen || !document.querySelector("main .verdict-band h1")) return;
    seen = true;
    painted(() => {
      notes.verdict = performance.now();
    });
  }).observe(document, { childList: true, subtree: true, characterData: true, attributes: true });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) notes.held = Math.max(notes.held, duration);
  }).observe({ type: "longtask", buffered: true });
}

const notesOf = (page: Page) => page.evaluate(() => (window as unknown as { notes: Notes }).notes);

async function throttled(context: BrowserContext, page: Page, slower: number): Promise<CDPSession> {
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slower });
  return session;
}

async function visited(browser: Browser, address: string, slower: number): Promise<Arrival> {
  const context = await browser.newContext({ baseURL: address, viewport: SCREEN, serviceWorkers: "block" });
  const page = await context.newPage();
  await throttled(context, page, slower);
  await page.addInitScript(note);
  await page.goto("/match", { waitUntil: "commit" });
  await page.waitForFunction(
    (unchanged) => {
      const { verdict, changed } = (window as unknown as { notes: Notes }).notes;
      const waits = document.querySelector("main .later-place, main [aria-busy=true]");
      return verdict !== null && !waits && performance.now() - changed > unchanged;
    },
    UNCHANGED,
    { timeout: PATIENCE, polling: 100 },
  );
  const { verdict, changed: last, held } = await notesOf(page);
  await context.close();
  return { verdict: (verdict ?? 0) / MILLISECONDS, whole: last / MILLISECONDS, held: held / MILLISECONDS };
}

/** @returns medians of a few visits, the longest hold-up of any */
async function arrival(browser: Browser, address: string, slower: number): Promise<Arrival> {
  const visits: Arrival[] = [];
  for (let i = 0; i < VISITS; i++) visits.push(await visited(browser, address, slower));
  return {
    verdict: median(visits.map(({ verdict }) => verdict)),
    whole: median(visits.map(({ whole }) => whole)),
    held: Math.max(...visits.map(({ held }) => held)),
  };
}

/** The views' names in the navigation. */
const VIEW_LINKS = ".shell-links a";

interface Change {
  readonly links: string;
  readonly place: number;
  /** how long is waited at most [ms] */
  readonly patience: number;
}

/** Runs in the page: clicks a view's name. @returns until that view is painted [ms]; null where it isn't in time */
function changed({ links, place, patience }: Change): Promise<number | null> {
  const link = document.querySelectorAll<HTMLAnchorElement>(links)[place];
  const heading = () => document.querySelector("main h1");
  const before = heading();
  const isShown = () => link.hasAttribute("aria-current") && heading() !== null && heading() !== before;
  const start = performance.now();
  return new Promise((resolve) => {
    const look = () => {
      if (performance.now() - start > patience) return resolve(null);
      if (!isShown()) return void requestAnimationFrame(look);
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => resolve(performance.now() - start);
      port2.postMessage(null);
    };
    link.click();
    requestAnimationFrame(look);
  });
}

interface Slowest {
  readonly name: string;
  /** [s] */
  readonly time: number;
}

async function changes(page: Page, still: () => Promise<void>) {
  const links = await page
    .locator(VIEW_LINKS)
    .evaluateAll((all) =>
      all.map((link) => ({ name: link.textContent ?? "", isShown: link.hasAttribute("aria-current") })),
    );
  const start = links.findIndex(({ isShown }) => isShown);
  const show = async (place: number): Promise<Slowest> => {
    const { name } = links[place];
    const time = await page.evaluate(changed, { links: VIEW_LINKS, place, patience: CHANGE_PATIENCE });
    if (time === null)
      throw new Error(
        `The view ${name} is not on the screen ${CHANGE_PATIENCE / MILLISECONDS} s after its name was clicked.`,
      );
    await still();
    return { name, time: time / MILLISECONDS };
  };
  const round = async () => {
    const times: Slowest[] = [];
    for (const place of links.keys()) if (place !== start) times.push(await show(place));
    await show(start);
    return times.reduce((slowest, each) => (each.time > slowest.time ? each : slowest));
  };
  return { views: links.length - 1, first: await round(), again: await round() };
}

/** Opens Match as one who comes for the first time, goes through every view, and drags on a slow machine; with the demo as it comes. */
export async function timedFelt(browser: Browser, address: string): Promise<FeltTimes> {
  const first = await arrival(browser, address, 1);
  const slow = await arrival(browser, address, SLOWER);
  const context = await browser.newContext({ baseURL: address, viewport: SCREEN, serviceWorkers: "block" });
  const page = await context.newPage();
  const still = watchedNetwork(page);
  await page.goto("/match");
  await page.locator("main h1").first().waitFor();
  await still();
  const change = await changes(page, still);
  const slowDrag = await timedMoves(page, await throttled(context, page, SLOWER));
  await context.close();
  return { arrival: first, slowArrival: slow, change, slowDrag, slower: SLOWER };
}
