import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { useScreens } from "./support/page.ts";

const screens = useScreens();

/** What a page keeps on its device: its stores' names, its database's, its cookie. */
const left = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const databases = (await indexedDB.databases()).map(({ name }) => `database ${name}`);
    const cookies = document.cookie ? [`cookie ${document.cookie}`] : [];
    return [...Object.keys(localStorage), ...Object.keys(sessionStorage), ...databases, ...cookies]
      .filter((name) => name.includes("of a test"))
      .sort();
  });

async function leave(page: Page): Promise<void> {
  await page.evaluate(async () => {
    localStorage.setItem("local of a test", "1");
    sessionStorage.setItem("session of a test", "1");
    // biome-ignore lint/suspicious/noDocumentCookie: as any script may.
    document.cookie = "cookie of a test=1";
    await new Promise((resolve, reject) => {
      const asked = indexedDB.open("of a test");
      asked.onsuccess = resolve;
      asked.onerror = reject;
    });
  });
}

describe("pages of one file's tests", () => {
  it("keep what they store over a reload, each for itself", async () => {
    const page = await screens.open("/parts");
    expect(await left(page)).toEqual([]);
    await leave(page);
    await page.reload();
    expect(await left(page)).toHaveLength(4);
    expect(await left(await screens.open("/parts"))).toEqual([]);
    await page.goto("about:blank");
  });

  it("know nothing of it in the next, wherever the page went", async () => {
    expect(await left(await screens.open("/parts"))).toEqual([]);
  });
});
