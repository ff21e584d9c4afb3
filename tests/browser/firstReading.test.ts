import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

const rename = async (name: string) => {
  const at = `${server.address}/api/v1/rotors/swept-nine`;
  const { data, revision } = (await (await fetch(at)).json()) as { data: object; revision: number };
  const answer = await fetch(at, {
    method: "PUT",
    headers: { "Content-Type": "application/json", "If-Match": `"${revision}"` },
    body: JSON.stringify({ ...data, name }),
  });
  expect(answer.status).toBe(200);
};

describe("a change while a page opens", () => {
  it("is on the screen, be it written after the book was read and before the stream stood", async () => {
    const page = await screens.open(`${server.address}/parts`);
    let renamed = false;
    await page.route("**/api/v1/rotors?**", async (route) => {
      const answer = await route.fetch();
      if (!renamed) {
        renamed = true;
        await rename("Swept nine, renamed meanwhile");
      }
      await route.fulfill({ response: answer });
    });
    await page.reload();
    await eventually(() => page.locator("main").textContent()).toContain("Swept nine, renamed meanwhile");
  });
});

describe("a page whose stream of changes comes late", () => {
  const opened = async (meanwhile: () => Promise<void>) => {
    const page = await screens.open("/docs/");
    // The stream of a shared worker is none of the page's.
    await page.addInitScript(() => {
      Reflect.deleteProperty(globalThis, "SharedWorker");
    });
    let readings = 0;
    let came = false;
    page.on("request", (request) => {
      if (/\/rotors\?/.test(request.url())) readings++;
    });
    await page.route("**/api/v1/events", async (route) => {
      await page.locator("main h1").first().waitFor();
      await meanwhile();
      came = true;
      await route.continue();
    });
    const told = page.waitForResponse(/events/);
    await page.goto(`${server.address}/parts`);
    await told;
    await page.waitForTimeout(1000);
    expect(came).toBe(true);
    return { page, readings: () => readings };
  };

  it("reads the book once where nothing was written meanwhile", async () => {
    const { readings } = await opened(async () => {});
    expect(readings()).toBe(1);
  });

  it("reads it again where something was, and shows it", async () => {
    const { page, readings } = await opened(() => rename("Swept nine, renamed before the stream"));
    await eventually(() => page.locator("main").textContent()).toContain("renamed before the stream");
    expect(readings()).toBe(2);
  });
});
