import type { BrowserContext, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { Stored, StoredOf } from "#shared/model/record.ts";
import { axeFindings, sideways } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { type OpenOptions, PHONE, useScreens } from "./support/page.ts";

const server = useOwnServer();
const screens = useScreens({ server });

/** What the browser itself writes when no server answers, or a request is refused. */
const GONE = /Failed to load resource|ERR_CONNECTION|ERR_INCOMPLETE|ERR_EMPTY|ERR_INTERNET|ERR_FAILED/;
const ON_PHONE: OpenOptions = { viewport: PHONE, isMobile: true, hasTouch: true, allowed: GONE };

const api = (path: string) => `${server.address}/api/v1${path}`;
const read = async <T>(path: string): Promise<T> => (await (await fetch(api(path))).json()) as T;
const named = async (title: string) =>
  (await read<{ items: StoredOf<"tests">[] }>(`/tests?q=${encodeURIComponent(title)}&limit=100`)).items;
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
const waiting = (page: Page) => page.getByRole("region", { name: "Waiting for the server" });
const notes = (page: Page) => page.locator(".waiting-notes");

/** A page whose browser keeps it, and the book as it is read now. */
async function keptPage(options: OpenOptions): Promise<Page> {
  const page = await screens.open("/bench", { ...options, serviceWorkers: "allow" });
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await eventually(() => page.evaluate(keptRecords)).toBeGreaterThan(0);
  return page;
}

/** Runs in the page: how many records of the book the browser keeps. */
function keptRecords(): Promise<number> {
  return new Promise((resolve) => {
    const opening = indexedDB.open("gripcurve book 1");
    opening.onsuccess = () => {
      const database = opening.result;
      if (!database.objectStoreNames.contains("records")) return resolve(0);
      const counting = database.transaction("records").objectStore("records").count();
      counting.onsuccess = () => {
        database.close();
        resolve(counting.result);
      };
    };
  });
}

async function opened(context: BrowserContext, path: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(path);
  await page.locator("main h1").first().waitFor();
  return page;
}

async function typePull(page: Page, title: string): Promise<void> {
  // On a phone the rows are folded away behind the pad.
  await page.locator("details", { hasText: "All pulls" }).evaluateAll((folds) => {
    for (const fold of folds) (fold as HTMLDetailsElement).open = true;
  });
  await page.getByLabel("pull 1, held").fill("410");
  await page.getByLabel("Title").fill(title);
}

async function saveTest(page: Page): Promise<void> {
  await button(page, "Save the test").click();
  await waiting(page).waitFor();
}

describe("a phone without the network", () => {
  it("opens the page, shows the book and the parts, keeps what is saved over closed tabs, and two tabs send it once", async () => {
    const first = await keptPage(ON_PHONE);
    const context = first.context();
    await server.without(async () => {
      const page = await opened(context, "/bench/new/pull");
      await eventually(() => page.locator("footer").textContent()).toMatch(
        /No connection to the server; the book is shown as this device read it on/,
      );
      expect(await page.getByLabel("Skirt").locator("option").count()).toBeGreaterThan(2);
      await typePull(page, "pull in the cellar");
      await saveTest(page);
      expect(await waiting(page).textContent()).toMatch(/pull test “pull in the cellar”\s+waiting/i);
      await eventually(() => page.locator("ol.bench-tests li").count()).toBeGreaterThan(20);
      expect(await axeFindings(page)).toEqual([]);
      expect(await sideways(page)).toEqual([]);
      await page.close();
      await first.close();

      const again = await opened(context, "/match/pane-crawler");
      await eventually(() => notes(again).textContent()).toMatch(/One record waits on this device/);
      await again.getByRole("link", { name: "Show it" }).click();
      await waiting(again)
        .getByRole("link", { name: /pull in the cellar/ })
        .click();
      await eventually(() => again.getByLabel("Title").inputValue()).toBe("pull in the cellar");
      await again.getByLabel("Title").fill("pull in the cellar, corrected");
      await saveTest(again);
      const beside = await opened(context, "/bench");
      await eventually(() => waiting(beside).textContent()).toContain("corrected");
    });
    for (const page of context.pages()) await eventually(() => waiting(page).count()).toBe(0);
    const said = await Promise.all(context.pages().map((page) => notes(page).textContent()));
    expect(said.filter((text) => text?.includes("Sent, and in the book now: the pull test")).length).toBe(1);
    const stored = await named("pull in the cellar");
    expect(stored.map(({ data, revision }) => [data.title, revision])).toEqual([
      ["pull in the cellar, corrected", 1],
    ]);
  });
});

describe("a part that is added without the network", () => {
  it("waits, can be discarded, and is nowhere then", async () => {
    const page = await screens.open("/parts/surfaces/new", { allowed: GONE });
    await server.without(async () => {
      await eventually(() => page.getByText("No connection to the server").count()).toBe(1);
      await page.getByLabel("Name").fill("Wet slate");
      await button(page, "Save").click();
      await eventually(() => waiting(page).textContent()).toMatch(/surface “Wet slate”\s+waiting/i);
      expect(await axeFindings(page)).toEqual([]);
      await button(page, "Discard the surface").click();
      await button(page, "Discard it").click();
      await eventually(() => waiting(page).count()).toBe(0);
    });
    await eventually(() => page.getByText("No connection to the server").count()).toBe(0);
    const { items } = await read<{ items: Stored<{ name: string }>[] }>("/surfaces?limit=100");
    expect(items.map(({ data }) => data.name)).not.toContain("Wet slate");
  });
});

describe("a test whose answer is lost on its way", () => {
  it("waits although it was stored, and is there once", async () => {
    const page = await screens.open("/bench/new/pull", { allowed: GONE });
    await typePull(page, "pull of a lost answer");
    await page.route("**/api/v1/tests", async (route) => {
      if (route.request().method() === "POST") await route.fetch();
      await route.abort();
    });
    await page.route("**/api/v1/health", (route) => route.abort());
    await saveTest(page);
    expect(await named("pull of a lost answer")).toHaveLength(1);
    await page.unroute("**/api/v1/tests");
    await page.unroute("**/api/v1/health");
    await button(page, "Try now").click();
    await eventually(() => waiting(page).count()).toBe(0);
    const [stored, ...more] = await named("pull of a lost answer");
    expect([stored.revision, more]).toEqual([1, []]);
  });
});

describe("a test that the server refuses after it waited", () => {
  it("stays with the reason, and is stored once it is put right in its form", async () => {
    const part = await fetch(api("/surfaces"), {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ name: "Short-lived slate" }),
    });
    const { id } = (await part.json()) as Stored<unknown>;
    const page = await screens.open(`/bench/new/friction?surface=${id}`, { allowed: GONE });
    await page.getByLabel("Title").fill("friction of a surface that goes");
    await page.getByLabel(/1, held/).fill("38");
    await page.route("**/api/v1/**", (route) => route.abort());
    await saveTest(page);
    expect((await fetch(api(`/surfaces/${id}`), { method: "DELETE" })).status).toBe(204);
    await page.unroute("**/api/v1/**");
    await button(page, "Try now").click();
    await eventually(() => waiting(page).textContent()).toMatch(/refused[\s\S]*surface/);
    expect(await axeFindings(page)).toEqual([]);
    await waiting(page)
      .getByRole("link", { name: /friction of a surface that goes/ })
      .click();
    await eventually(() => page.locator(".bench-summary").textContent()).toMatch(
      /one field needs another look/,
    );
    const [{ id: other }] = (await read<{ items: Stored<unknown>[] }>("/surfaces?limit=1")).items;
    await page.getByLabel("Surface").selectOption(other);
    await button(page, "Save the test").click();
    await eventually(() => page.locator(".bench-saved").textContent()).toMatch(
      /friction of a surface that goes/,
    );
    expect(await named("friction of a surface that goes")).toHaveLength(1);
    expect(await waiting(page).count()).toBe(0);
  });
});

describe("a browser that keeps nothing, without the network", () => {
  it("says so, and leaves the form as it was typed", async () => {
    const page = await screens.open("/bench", { allowed: GONE });
    await page.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await page.goto("/bench/new/pull");
    await typePull(page, "pull that can't wait");
    await page.route("**/api/v1/**", (route) => route.abort());
    await button(page, "Save the test").click();
    await eventually(() => page.locator(".bench-summary").textContent()).toMatch(
      /It can't wait on this device: this browser's storage is full or switched off/,
    );
    expect(await page.getByLabel("Title").inputValue()).toBe("pull that can't wait");
  });
});

describe("what is done without the network to what is in the book", () => {
  it("waits, marked where it stands, and is done once: a test struck out, another deleted, a part retired, a new build", async () => {
    const page = await screens.open("/bench/archive", { allowed: GONE });
    await page.getByRole("link", { name: "Back to the list" }).click();
    await page.locator("ol.bench-tests li").first().waitFor();
    const [first, second] = (await read<{ items: StoredOf<"tests">[] }>("/tests?limit=2")).items;
    const row = (id: string) =>
      page.locator("ol.bench-tests li", { has: page.locator(`a[href="/bench/${id}"]`) });
    await server.without(async () => {
      await eventually(() => page.getByText("No connection to the server").count()).toBe(1);
      await row(first.id)
        .getByRole("button", { name: /^Strike out/ })
        .click();
      await page.getByLabel("Struck out because").fill("wrong hose");
      await button(page, "Strike it out").click();
      await eventually(() => row(first.id).textContent()).toMatch(/A correction made on this device waits/);
      await row(second.id)
        .getByRole("button", { name: /^Delete/ })
        .click();
      await button(page, "Delete it").click();
      await eventually(() => row(second.id).textContent()).toMatch(/Deleted on this device; that waits/);
      expect(await waiting(page).textContent()).toMatch(/Deletion of the [\s\S]*waiting/);
      expect(await waiting(page).textContent()).toMatch(/Correction of the [\s\S]*, struck out: wrong hose/);
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole("link", { name: "Archive and backup" }).click();
      await page.locator("main").getByText("None of this waits on this device").waitFor();
    });
    await eventually(() => notes(page).textContent()).toMatch(/Sent, and deleted now: the/);
    const state = async (id: string) => (await fetch(api(`/tests/${id}`))).status;
    expect(await state(second.id)).toBe(404);
    const { data, revision } = await read<StoredOf<"tests">>(`/tests/${first.id}`);
    expect([data.struckOut, revision]).toEqual(["wrong hose", first.revision + 1]);
  });

  it("a build kept from Match, and a part retired, wait as well", async () => {
    const page = await screens.open("/match/pane-crawler?duty=0.9", { allowed: GONE });
    await button(page, "Save as a new build").waitFor();
    const other = await page.context().newPage();
    const surfaces = (await read<{ items: Stored<{ name: string }>[] }>("/surfaces?limit=100")).items;
    await other.goto(`/parts/surfaces/${surfaces[0].id}`);
    await other.locator("main h1").first().waitFor();
    await server.without(async () => {
      await eventually(() => page.getByText("No connection to the server").count()).toBe(1);
      await eventually(() => other.getByText("No connection to the server").count()).toBe(1);
      await button(page, "Save as a new build").click();
      await page.getByLabel("Name of the new build").fill("Pane crawler of the cellar");
      await page.locator("form.save-build").getByRole("button", { name: "Save", exact: true }).click();
      await eventually(() => notes(page).textContent()).toMatch(/One record waits/);
      await button(other, "Retire").click();
      await other.getByLabel("Retired because").fill("pane broke");
      await button(other, "Retire this surface").click();
      await eventually(() => notes(page).textContent()).toMatch(/2 records wait/);
    });
    await eventually(
      async () => (await read<{ items: unknown[] }>("/builds?q=of%20the%20cellar")).items.length,
    ).toBe(1);
    await eventually(
      async () => (await read<Stored<{ retired?: string }>>(`/surfaces/${surfaces[0].id}`)).data.retired,
    ).toBe("pane broke");
  });
});
