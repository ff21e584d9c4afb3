import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { StoredOf } from "#shared/model/record.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

const at = (path: string) => server.address + path;
const save = (page: Page) => page.getByRole("button", { name: "Save the test" }).click();
const problem = (page: Page) => page.locator(".problem").first();
const connectionLost = (page: Page) => page.getByText("No connection to the server").count();
const held = (page: Page) => page.getByLabel("pull 1, held");

/** What the browser itself writes when no server answers. */
const GONE = /Failed to load resource|ERR_CONNECTION|ERR_INCOMPLETE|ERR_EMPTY/;

/** Types one pull, under a title that tells it from all others. */
async function typed(page: Page, title: string): Promise<void> {
  await page.goto(at("/bench/new/pull"));
  await held(page).fill("410");
  await page.getByLabel("Title").fill(title);
}

async function stored(title: string): Promise<number> {
  const answer = await fetch(at("/api/v1/tests?kind=pull&limit=500"));
  const { items } = (await answer.json()) as { items: StoredOf<"tests">[] };
  return items.filter(({ data }) => data.title === title).length;
}

async function savedOnce(page: Page, title: string): Promise<void> {
  await save(page);
  await eventually(() => stored(title)).toBe(1);
}

describe("a server that is gone while a test is typed", () => {
  it("is said to be, what is saved waits, and it is stored once the server is back", async () => {
    const page = await screens.open(at("/bench"), { allowed: GONE });
    await typed(page, "pull of a stopped server");
    await server.without(async () => {
      await eventually(() => connectionLost(page)).toBe(1);
      expect(await held(page).inputValue()).toMatch(/^410/);
      await save(page);
      await eventually(() => page.locator(".waiting").textContent()).toContain("pull of a stopped server");
    });
    await eventually(() => connectionLost(page)).toBe(0);
    await eventually(() => stored("pull of a stopped server")).toBe(1);
    await eventually(() => page.locator(".waiting").count()).toBe(0);
  });
});

describe("a server that comes back as another version", () => {
  it("is said to be, and a reload brings back what was typed", async () => {
    const page = await screens.open(at("/bench"), { allowed: GONE });
    await typed(page, "pull of another version");
    const health = { status: 200, json: { status: "ok", version: "99.0.0" } };
    await page.route("**/api/v1/health", (route) => route.fulfill(health));
    await server.restart();
    await eventually(() => problem(page).textContent()).toMatch(/The server is version 99\.0\.0 by now/);
    expect(await held(page).inputValue()).toMatch(/^410/);
    await page.unroute("**/api/v1/health");
    await page.getByRole("button", { name: "Reload the page" }).click();
    await eventually(() => held(page).inputValue()).toMatch(/^410/);
    expect(await page.getByLabel("Title").inputValue()).toBe("pull of another version");
    expect(await problem(page).count()).toBe(0);
    await savedOnce(page, "pull of another version");
  });
});

describe("a browser whose storage is full", () => {
  it("says that nothing typed is kept, and saves all the same", async () => {
    const page = await screens.open(at("/bench"));
    await page.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await typed(page, "pull of a full storage");
    await eventually(() => problem(page).textContent()).toMatch(/doesn't keep what you type/);
    await savedOnce(page, "pull of a full storage");
  });
});

describe("a browser whose storage is switched off", () => {
  it.each(["/match", "/choose", "/attitudes", "/bench"])("shows %s all the same", async (path) => {
    const page = await screens.open(at("/bench"));
    await page.addInitScript(switchOff);
    await page.goto(at(path));
    await page.locator("main h1").first().waitFor();
    await page.getByLabel("Colours").selectOption("dark");
    expect(await page.locator("html").getAttribute("data-theme")).toBe("dark");
  });

  it("says that nothing typed is kept, and saves all the same", async () => {
    const page = await screens.open(at("/bench"));
    await page.addInitScript(switchOff);
    await typed(page, "pull without storage");
    await eventually(() => problem(page).textContent()).toMatch(/full or switched off/);
    await savedOnce(page, "pull without storage");
  });
});

/** As browsers do where a person refuses a site's data: the very look at it is refused. */
function switchOff(): void {
  for (const name of ["localStorage", "sessionStorage"])
    Object.defineProperty(window, name, {
      get: () => {
        throw new DOMException("refused", "SecurityError");
      },
    });
}

describe("two tabs with the same form", () => {
  it("store what each typed, and the second keeps its own when the first has saved", async () => {
    const first = await screens.open(at("/bench"));
    const second = await first.context().newPage();
    await typed(first, "pull of the first tab");
    await typed(second, "pull of the second tab");
    await second.getByLabel("pull 1, held").fill("420");
    await savedOnce(first, "pull of the first tab");
    await eventually(() => second.evaluate(() => JSON.stringify(localStorage))).toContain("second tab");
    await second.reload();
    await eventually(() => second.getByLabel("Title").inputValue()).toBe("pull of the second tab");
    expect(await held(second).inputValue()).toMatch(/^420/);
    await savedOnce(second, "pull of the second tab");
  });
});

describe("a clock that is set back by a year while a test is typed", () => {
  it("loses nothing that was typed, and the test is stored", async () => {
    const page = await screens.open(at("/bench"), { alone: true });
    const now = Date.now();
    await page.clock.install({ time: now });
    await typed(page, "pull of another year");
    await page.clock.setSystemTime(now - 365 * 24 * 3600 * 1000);
    await held(page).fill("430");
    await page.reload();
    await eventually(() => held(page).inputValue()).toMatch(/^430/);
    await savedOnce(page, "pull of another year");
  });
});
