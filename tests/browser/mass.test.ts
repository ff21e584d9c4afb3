import type { Page } from "playwright-core";
import { describe, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

const answer = async (page: Page) => (await page.locator("main h1").textContent()) ?? "";
const field = (page: Page, label: string) => page.locator(".mass-line-form").getByLabel(label);
const line = (page: Page, name: string) => page.locator(".mass-ledger tr", { hasText: name });

describe("Mass", () => {
  it("says what is left, follows a line while it is typed, keeps it, and takes it out again with a way back", async () => {
    const page = await screens.open(`${server.address}/mass/pane-crawler`);
    await eventually(() => answer(page)).toMatch(
      /^\d+\sg left for the overhang at \d+°, the tightest; \d+\sg for the wall\.$/,
    );
    const verdict = page.getByRole("region", { name: "Verdict" });
    await eventually(() => verdict.textContent()).toMatch(/^holds.*the tightest\.1\.\d\d\s×.*Why$/);
    await page.getByText("The whole, as one number").click();
    await page.getByRole("button", { name: /^Let the sum count/ }).click();
    await eventually(() => page.locator(".answer-figures").textContent()).toMatch(/as the sum of its lines/);
    const before = Number.parseFloat(await answer(page));
    await page.getByRole("button", { name: "Add a line" }).click();
    await field(page, "What it is").fill("Tether");
    await field(page, "Mass of a piece, g").fill("heavy");
    await page.getByRole("button", { name: "Save the line" }).click();
    await eventually(() => page.locator(".mass-line-form .field-error").textContent()).toMatch(/“?heavy/);
    await field(page, "Mass of a piece, g").fill("20");
    await eventually(async () => Number.parseFloat(await answer(page))).toBe(before - 20);
    await page.getByRole("button", { name: "Save the line" }).click();
    await line(page, "Tether").waitFor();
    await line(page, "Tether")
      .getByRole("button", { name: /^remove/ })
      .click();
    await eventually(() => line(page, "Tether").count()).toBe(0);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await line(page, "Tether").waitFor();
    await eventually(async () => Number.parseFloat(await answer(page))).toBe(before - 20);
  });

  it("of a build that is too heavy, finds the swaps that make it light enough, and makes a build of them", async () => {
    const address = `${server.address}/api/v1/builds/roof-crawler`;
    const { revision, data } = await (await fetch(address)).json();
    const wiper = {
      name: "Long wiper",
      group: "structure",
      mass: 0.3,
      alternatives: [{ name: "Short wiper", mass: 0.05 }],
    };
    await fetch(address, {
      method: "PUT",
      headers: { "Content-Type": "application/json", "If-Match": `"${revision}"` },
      body: JSON.stringify({ ...data, targetMargin: 1, ledger: [wiper] }),
    });
    const page = await screens.open(`${server.address}/mass/roof-crawler`);
    await page.locator(".mass-swaps").getByText("Short wiper for Long wiper", { exact: false }).waitFor();
    const before = await answer(page);
    await page.getByRole("button", { name: "Apply these swaps" }).first().click();
    await line(page, "Short wiper").waitFor();
    await eventually(() => answer(page)).not.toBe(before);
  });
});
