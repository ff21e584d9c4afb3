import type { Page, Route } from "playwright-core";
import { describe, expect, it } from "vitest";
import { PATIENCE } from "#client/state/api.ts";
import type { StoredOf } from "#shared/model/record.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { type OpenOptions, useScreens } from "./support/page.ts";

const screens = useScreens();

const server = useOwnServer();

const at = (path: string) => server.address + path;
const read = async <T>(path: string): Promise<T> => (await (await fetch(at(`/api/v1${path}`))).json()) as T;
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

/** Holds the page's writes back; each is answered when it is let through. */
async function heldWrites(page: Page): Promise<Route[]> {
  const held: Route[] = [];
  await page.route("**/api/v1/**", (route) => {
    const isWrite = ["POST", "PUT"].includes(route.request().method());
    if (isWrite) held.push(route);
    else void route.continue();
  });
  return held;
}

/** A form with one pull typed in, as a maker fills it. */
async function pullForm(options?: OpenOptions): Promise<Page> {
  const page = await screens.open(at("/bench"), { ...options, alone: true });
  await page.clock.install();
  await page.goto(at("/bench/new/pull"));
  await page.getByLabel("pull 1, held").fill("410");
  await page.getByLabel("Title").fill("pull that is held back");
  return page;
}

const storedPulls = async () =>
  (await read<{ items: StoredOf<"tests">[] }>("/tests?kind=pull&limit=100")).items.filter(
    ({ data }) => data.title === "pull that is held back",
  );

describe("a server that never answers a save", () => {
  it("leaves the test waiting, and it is stored once", async () => {
    const page = await pullForm();
    const held = await heldWrites(page);
    await button(page, "Save the test").click();
    await eventually(() => held.length).toBe(1);
    expect(await button(page, "Saving…").isDisabled()).toBe(true);
    await page.clock.fastForward(PATIENCE);
    await eventually(() => page.locator(".waiting").textContent()).toContain("pull that is held back");
    await page.unroute("**/api/v1/**");
    await button(page, "Try now").click();
    await eventually(() => page.locator(".waiting").count()).toBe(0);
    expect(await storedPulls()).toHaveLength(1);
    const [{ id }] = await storedPulls();
    await fetch(at(`/api/v1/tests/${id}`), { method: "DELETE" });
  });

  it("says so in the list where the form was discarded meanwhile", async () => {
    const page = await pullForm();
    const held = await heldWrites(page);
    await button(page, "Save the test").click();
    await eventually(() => held.length).toBe(1);
    await button(page, "Discard").click();
    await page.locator(".bench-test").first().waitFor();
    await page.clock.fastForward(PATIENCE);
    await eventually(() => page.locator(".problem").textContent()).toMatch(
      /What you discarded may be in the book all the same/,
    );
    await button(page, "Dismiss").click();
    expect(await page.locator(".problem").count()).toBe(0);
  });
});

describe("Discard while a test is being saved", () => {
  it("leaves none in the book, however late the server stores it", async () => {
    // The page hears that the test was stored and may ask for it when it has gone again: the browser's own line.
    const page = await pullForm({ allowed: /404/ });
    const held = await heldWrites(page);
    await button(page, "Save the test").click();
    await eventually(() => held.length).toBe(1);
    await button(page, "Discard").click();
    await page.waitForURL(/\/bench$/);
    const deleted = page.waitForResponse((response) => response.request().method() === "DELETE");
    await held[0].continue();
    expect((await deleted).status()).toBe(204);
    expect(await storedPulls()).toEqual([]);
    expect(page.url()).toBe(at("/bench"));
  });

  it("puts back what a corrected test said", async () => {
    const [test] = (await read<{ items: StoredOf<"tests">[] }>("/tests?kind=friction&limit=1")).items;
    const page = await screens.open(at(`/bench/${test.id}`));
    const held = await heldWrites(page);
    await page.getByLabel("Title").fill("a correction that is discarded");
    await button(page, "Save the correction").click();
    await eventually(() => held.length).toBe(1);
    await button(page, "Discard").click();
    await held[0].continue();
    await eventually(() => held.length).toBe(2);
    await held[1].continue();
    await eventually(async () => (await read<StoredOf<"tests">>(`/tests/${test.id}`)).revision).toBe(
      test.revision + 2,
    );
    expect((await read<StoredOf<"tests">>(`/tests/${test.id}`)).data).toEqual(test.data);
  });
});

describe("another view while a part is being saved", () => {
  it("stays on the screen when the part is stored", async () => {
    const page = await screens.open(at("/parts/rotors/swept-nine"));
    const held = await heldWrites(page);
    await page.getByLabel("Name").first().fill("Swept nine, renamed while leaving");
    await button(page, "Save").click();
    await eventually(() => held.length).toBe(1);
    await page.getByRole("link", { name: "Attitudes" }).click();
    await page.waitForURL(/\/attitudes/);
    await held[0].continue();
    await eventually(async () => (await read<StoredOf<"rotors">>("/rotors/swept-nine")).data.name).toBe(
      "Swept nine, renamed while leaving",
    );
    await eventually(() => page.locator("main h1").count()).toBe(1);
    expect(page.url()).toMatch(/\/attitudes/);
  });
});

describe("an answer of 200 that is no JSON", () => {
  it("is said to be none, and the book is read at the next try", async () => {
    const page = await screens.open(at("/match"));
    const html = { status: 200, contentType: "text/html", body: "<!doctype html><p>Sign in to the network" };
    let answers = 0;
    await page.route("**/api/v1/packs*", async (route) => {
      await route.fulfill(html);
      answers++;
    });
    await page.reload();
    // Once the stream of changes stands, the page tries again by itself.
    await eventually(() => answers).toBe(2);
    await eventually(() => page.locator(".problem").textContent()).toMatch(
      /The bench book could not be read\. The answer is no JSON/,
    );
    await page.unroute("**/api/v1/packs*");
    await button(page, "Try again").click();
    await page.locator("main h1").waitFor();
    expect(await page.locator(".problem").count()).toBe(0);
  });
});
