import type { Page } from "playwright-core";
import { describe, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

const answer = async (page: Page) => (await page.locator("main h1").textContent()) ?? "";

describe("Fit-up", () => {
  it("says what may not close, follows another motor, and keeps a stack that is typed", async () => {
    const page = await screens.open(`${server.address}/fit-up/pane-crawler`);
    await eventually(() => answer(page)).toMatch(/^May not close: motor in its pocket is 0\.05\smm short/);
    await page.getByText(/To close at worst: make “Motor pocket, bore” 0\.05\smm larger/).waitFor();
    await page.getByLabel("Motor", { exact: true }).selectOption("bell-22");
    await eventually(() => answer(page)).toMatch(/^Will not close: motor in its pocket is 5\.80\smm short/);
    await page.getByRole("button", { name: "Back to its own parts" }).click();
    await page.getByRole("button", { name: /^change Motor in its pocket/ }).click();
    const size = page.locator(".fit-form").getByLabel("Size, mm").first();
    await size.fill("wide");
    await page.getByRole("button", { name: "Save the stack" }).click();
    await eventually(() => page.locator(".fit-form .field-error").textContent()).toMatch(/wide/);
    await size.fill("22.5 mm");
    await eventually(() => answer(page)).toMatch(/^Everything closes; tightest is tip clearance, 0\.20\smm/);
    await page.getByRole("button", { name: "Save the stack" }).click();
    await page.locator(".fit-form").waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Height under the cover", exact: true }).click();
    await page.locator(".fit-form").getByLabel("Size, mm").first().fill("20 mm");
    await eventually(() => answer(page)).toMatch(
      /^Will not close: height under the cover, 6 is 11\.0\smm short/,
    );
    await page.getByRole("button", { name: "Cancel" }).click();
    await eventually(() => answer(page)).toMatch(/^Everything closes/);
  });
});
