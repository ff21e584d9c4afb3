import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { StoredOf } from "#shared/model/record.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

/** A browser opens at most six connections to one address: what holds one open a page stops the seventh page. */
const MORE_THAN_CONNECTIONS = 8;

// Pages are kept when they are left, as in a browser that a person uses.
const screens = useScreens({ launch: { ignoreDefaultArgs: ["--disable-back-forward-cache"] } });

const server = useOwnServer();

const at = (path: string) => server.address + path;
const title = (page: Page) => page.locator("main h1").first();

/** Gives the demo's build another name, as another screen would. */
async function rename(name: string): Promise<void> {
  const url = at("/api/v1/builds/pane-crawler");
  const build = (await (await fetch(url)).json()) as StoredOf<"builds">;
  const answer = await fetch(url, {
    method: "PUT",
    headers: { "Content-Type": "application/json", "If-Match": `"${build.revision}"` },
    body: JSON.stringify({ ...build.data, name }),
  });
  expect(answer.status).toBe(200);
}

const shownName = (page: Page) => page.locator(".build-picker select option:checked").textContent();

/** A browser without shared workers, as on most phones. */
const withoutSharedWorker = (page: Page) =>
  page.addInitScript(() => Reflect.deleteProperty(window, "SharedWorker"));

describe("many tabs of one browser", () => {
  it("all load, and the first and the last follow what is written elsewhere", async () => {
    const first = await screens.open(at("/match"));
    const tabs = [first];
    while (tabs.length < MORE_THAN_CONNECTIONS) {
      const tab = await first.context().newPage();
      await tab.goto(at(tabs.length < MORE_THAN_CONNECTIONS - 1 ? "/bench" : "/match/pane-crawler"));
      await title(tab).waitFor();
      tabs.push(tab);
    }
    await rename("Crawler seen from eight tabs");
    for (const tab of [first, tabs.at(-1) ?? first])
      await eventually(() => shownName(tab)).toBe("Crawler seen from eight tabs");
  });
});

describe.each([
  ["with shared workers", false],
  ["without shared workers", true],
])("many addresses typed into one tab, %s", (_case, without) => {
  it("all load, and the last follows what is written elsewhere", async () => {
    const page = await screens.open(at("/bench"));
    if (without) await withoutSharedWorker(page);
    for (let n = 0; n < MORE_THAN_CONNECTIONS; n++) {
      await page.goto(at(n % 2 === 0 ? "/parts" : "/curves"));
      await title(page).waitFor();
    }
    await page.goto(at("/match/pane-crawler"));
    await title(page).waitFor();
    const name = `Crawler ${_case}`;
    await rename(name);
    await eventually(() => shownName(page)).toBe(name);
  });

  it("the page before, gone back to, has read what was written meanwhile and follows on", async () => {
    const page = await screens.open(at("/bench"));
    if (without) await withoutSharedWorker(page);
    // A second page keeps the browser from starting the first anew.
    const beside = await page.context().newPage();
    await beside.goto(at("/bench"));
    await title(beside).waitFor();
    await page.goto(at("/match/pane-crawler"));
    await title(page).waitFor();
    await page.goto("about:blank");
    await rename(`Renamed while away ${_case}`);
    await page.goBack({ waitUntil: "commit" });
    await eventually(() => shownName(page)).toBe(`Renamed while away ${_case}`);
    await rename(`Renamed once back ${_case}`);
    await eventually(() => shownName(page)).toBe(`Renamed once back ${_case}`);
  });
});
