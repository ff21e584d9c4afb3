import type { Page, Request } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { crowdedBook } from "#tests/support/crowdedBook.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const server = useOwnServer();
const screens = useScreens({ server });
const beside = useScreens();

const TESTS = 1200;
const GONE = /Failed to load resource|ERR_CONNECTION|ERR_INCOMPLETE|ERR_EMPTY|ERR_INTERNET|ERR_FAILED/;

const api = (path: string) => `${server.address}/api/v1${path}`;

async function send(path: string, body: unknown): Promise<void> {
  const headers = { "Content-Type": "application/json" };
  const response = await fetch(api(path), { method: "POST", headers, body: JSON.stringify(body) });
  if (!response.ok) throw new Error(await response.text());
}

/** The demo with many tests of other makers' parts takes the place of the demo. */
beforeAll(async () => {
  const archive = (await (await fetch(api("/archive"))).json()) as { records: object };
  const records = crowdedBook(demoBook(), { groups: 4, tests: TESTS });
  await send("/archive?replace=true", { ...archive, records, predictions: [] });
}, 120_000);

/** Follows what a page reads of the tests. */
function follow(page: Page) {
  const asked: string[] = [];
  const found: Promise<readonly string[]>[] = [];
  page.on("requestfinished", (request: Request) => {
    const [, query] = request.url().split("/api/v1/tests?");
    if (query === undefined) return;
    asked.push(query);
    const ids = async () => {
      const answer = (await (await request.response())?.json()) as
        | { items?: readonly { id: string }[] }
        | undefined;
      return (answer?.items ?? []).map(({ id }) => id);
    };
    found.push(ids().catch(() => []));
  });
  return {
    asked,
    /** how many of them, each once: what is written meanwhile has a page read anew */
    read: async () => new Set((await Promise.all(found)).flat()).size,
  };
}

const verdict = (page: Page) => page.locator(".verdict-band h1").textContent();

/** A page on its first screen, whose requests are followed from the beginning. */
async function opened(path: string) {
  const page = await screens.open("/docs/", { allowed: GONE });
  const followed = follow(page);
  await page.goto(path);
  await page.locator("main h1").first().waitFor();
  return { page, ...followed };
}

describe("a book of many tests, opened on one build", () => {
  it("shows the verdict that the build has in a small book, and has read a small part of the tests", async () => {
    const small = await beside.open("/match/pane-crawler");
    const { page, read, asked } = await opened("/match/pane-crawler");
    const sentence = await verdict(small);
    expect(sentence).toMatch(/\w/);
    await eventually(() => verdict(page)).toBe(sentence);
    expect(await read()).toBeLessThan(TESTS / 4);
    expect(asked.some((query) => !/limit=200|kind=/.test(query))).toBe(false);
  });

  it("reads the tests of a part that is tried before it counts with them", async () => {
    const { page, asked } = await opened("/match/pane-crawler");
    await page.getByLabel("Motor", { exact: true }).selectOption("g2-bell-18");
    await eventually(() => page.url()).toContain("motor=g2-bell-18");
    expect(asked.some((query) => query.includes("motor=g2-bell-18"))).toBe(true);
    const figures = (each: Page) => each.locator(".verdict-band").textContent();
    const fresh = await screens.open("/match/pane-crawler?motor=g2-bell-18");
    await eventually(() => figures(fresh)).toMatch(/working of chance of holding/);
    await eventually(() => figures(page)).toBe(await figures(fresh));
  });

  it("follows a pull that comes from elsewhere with another rig: what that rig rests on is read as well", async () => {
    const { asked } = await opened("/match/pane-crawler");
    const build = demoBook().builds.find(({ id }) => id === "pane-crawler")?.data;
    const pull = demoBook().tests.find(({ data }) => data.kind === "pull")?.data;
    if (!build || !pull) throw new Error("The demo has no such build or pull.");
    const { skirt, surface } = build;
    const rig = { rotor: "g1-swept-nine", motor: "g1-bell-18", pack: `g1-${build.pack}` };
    await send("/tests", { ...pull, ...rig, skirt, surface, title: "of another rig" });
    await eventually(
      () => asked.filter((query) => query.includes("rotor=g1-swept-nine")).length,
    ).toBeGreaterThan(0);
    await eventually(() => asked.some((query) => query.includes(`pack=${rig.pack}`))).toBe(true);
  });
});

describe("the Bench of a book of many tests", () => {
  it("shows its first page and how many there are, and none is read for the figures of a build", async () => {
    const { page, asked, read } = await opened("/bench");
    await eventually(() => page.locator("ol.bench-tests li").count()).toBe(25);
    expect(await page.locator("main h1").textContent()).toMatch(/1\D?2\d\d tests are in the book/);
    expect(await read()).toBeLessThan(TESTS / 4);
    await page.getByRole("button", { name: "More" }).click();
    await eventually(() => page.locator("ol.bench-tests li").count()).toBe(50);
    expect(asked.filter((query) => query.includes("rotor=")).length).toBe(0);
  });

  it("a form predicts with the tests of its parts, which it asks for", async () => {
    const { page, asked } = await opened("/bench/new/pull?skirt=g3-pane-skirt");
    await page.locator("details", { hasText: "All pulls" }).evaluateAll((folds) => {
      for (const fold of folds) (fold as HTMLDetailsElement).open = true;
    });
    await page.getByLabel("pull 1, held").fill("410");
    await eventually(() => asked.some((query) => query.includes("kind=motor"))).toBe(true);
    const wanted = await page.getByLabel("Motor").inputValue();
    await eventually(() => asked.some((query) => query.includes(`motor=${wanted}`))).toBe(true);
  });
});

/** How many tests of some kinds name a part of the book on the server. */
async function counted(name: string, id: string, kinds?: readonly string[]): Promise<number> {
  const { tests } = (await (await fetch(api("/fits"))).json()) as {
    tests: Record<string, Record<string, Record<string, number>>>;
  };
  const counts = Object.entries(tests[name][id]).filter(([kind]) => !kinds || kinds.includes(kind));
  return counts.reduce((sum, [, count]) => sum + count, 0);
}

describe("the list of all parts of a book of many tests", () => {
  it("shows curves and counts of every part, and has read next to no test", async () => {
    const { page, read } = await opened("/parts");
    const row = page.locator(".parts li", { has: page.locator('a[href$="/rotors/g3-swept-nine"]') });
    await row.locator("svg.part-sketch").waitFor();
    const many = await counted("rotor", "g3-swept-nine");
    expect(many).toBeGreaterThan(20);
    expect(await row.textContent()).toContain(`${many} tests`);
    expect(await read()).toBeLessThan(TESTS / 4);
  });

  it("follows a test that comes from elsewhere", async () => {
    const { page } = await opened("/parts");
    const row = page.locator(".parts li", { has: page.locator('a[href$="/rotors/g2-swept-nine"]') });
    const before = await counted("rotor", "g2-swept-nine");
    await eventually(() => row.textContent()).toContain(`${before} tests`);
    const pull = demoBook().tests.find(({ data }) => data.kind === "pull")?.data;
    await send("/tests", { ...pull, rotor: "g2-swept-nine", title: "one more" });
    await eventually(() => row.textContent()).toContain(`${before + 1} tests`);
  });
});

describe("Curves of a book of many tests", () => {
  it("without a part opens the first with its tests alone, beside the counts of all", async () => {
    const { page, read, asked } = await opened("/curves");
    await page.locator(".curves-picture svg").first().waitFor();
    const other = page.locator('.curves-parts a[href$="/rotors/g3-swept-nine"]');
    const many = await counted("rotor", "g3-swept-nine", ["curve", "thrust"]);
    expect(await other.textContent()).toContain(`${many} tests`);
    expect(await read()).toBeLessThan(TESTS / 4);
    expect(asked.some((query) => query.includes("g3-"))).toBe(false);
    await other.click();
    await page.locator(".curves-picture svg").first().waitFor();
    await eventually(() => asked.some((query) => query.includes("rotor=g3-swept-nine"))).toBe(true);
  });
});

describe("a view that takes more tests than the page holds", () => {
  it("keeps the view before on the screen until they are read", async () => {
    const { page } = await opened("/match/pane-crawler");
    await page.route(/\/api\/v1\/(fits|tests\?)/, async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 400));
      await route.continue();
    });
    await page.getByRole("link", { name: "Curves", exact: true }).first().click();
    await page.getByRole("progressbar", { name: "Reading the bench book" }).waitFor();
    expect(await page.locator(".verdict-band").count()).toBe(1);
    await page.locator(".curves").waitFor();
    expect(await page.locator(".curves-parts").textContent()).toMatch(/\d+ tests/);
  });
});

describe("a book of many tests, without the network", () => {
  it("opens the views that were seen before, and says of another that its tests are not here", async () => {
    const page = await screens.open("/match/pane-crawler", { allowed: GONE, serviceWorkers: "allow" });
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    const sentence = await verdict(page);
    // a moment until the book is kept
    await page.waitForTimeout(2500);
    await page.goto("/bench");
    await page.locator("ol.bench-tests li").first().waitFor();
    await page.waitForTimeout(2500);
    await server.without(async () => {
      await page.goto("/match/pane-crawler");
      await eventually(() => verdict(page)).toBe(sentence);
      await page.getByRole("link", { name: "Curves", exact: true }).first().click();
      await eventually(() => page.locator("main").textContent()).toMatch(
        /tests that the view “Curves” takes could not be read/,
      );
      await page.goto("/bench/new/pull");
      await page.getByLabel("Title").waitFor();
    });
  });
});
