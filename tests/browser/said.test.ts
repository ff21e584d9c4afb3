import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { StoredOf } from "#shared/model/record.ts";
import { settled } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();

const server = useOwnServer();

type Listening = Window & { said: string[] };

/** Keeps all that the page's voice says from now on. */
const listen = (page: Page) =>
  page.evaluate(() => {
    const said: string[] = [];
    (window as unknown as Listening).said = said;
    const voice = document.querySelector("[aria-live=polite]");
    if (!voice) throw new Error("The page has no voice.");
    new MutationObserver((changes) => {
      for (const { addedNodes } of changes) for (const node of addedNodes) said.push(node.textContent ?? "");
    }).observe(voice, { childList: true, subtree: true });
  });

const said = (page: Page) => page.evaluate(() => (window as unknown as Listening).said);

/** Wants another margin of the demo's build, as another device would [-]. */
async function want(targetMargin: number): Promise<void> {
  const url = `${server.address}/api/v1/builds/pane-crawler`;
  const build = (await (await fetch(url)).json()) as StoredOf<"builds">;
  const answer = await fetch(url, {
    method: "PUT",
    headers: { "Content-Type": "application/json", "If-Match": `"${build.revision}"` },
    body: JSON.stringify({ ...build.data, targetMargin }),
  });
  expect(answer.status).toBe(200);
}

const MORE_THAN_IT_HAS = 3;

describe("a verdict, to who can't see it change", () => {
  it("says nothing while the page loads, what it comes to once behind many steps of a setting, and what another device made of it", async () => {
    const page = await screens.open(`${server.address}/match`);
    await listen(page);
    await settled(page);
    expect(await said(page)).toEqual([]);
    const gap = page.getByRole("slider", { name: "Gap, slider" });
    await gap.focus();
    for (let step = 0; step < 8; step++) await page.keyboard.press("ArrowRight");
    await eventually(() => said(page)).toHaveLength(1);
    await settled(page);
    expect((await said(page))[0]).toMatch(/^\w+.*, \d\.\d\d\s×\sthe pull needed on /);
    expect(await said(page)).toHaveLength(1);
    await page.getByRole("button", { name: "Reset all" }).click();
    await eventually(() => said(page)).toHaveLength(2);
    await want(MORE_THAN_IT_HAS);
    await eventually(() => said(page)).toHaveLength(3);
    expect((await said(page))[2]).toMatch(/^tight, /);
  });
});
