import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();

const server = useOwnServer();

const open = (path: string) => screens.open(server.address + path);
const button = (within: Page | Locator, name: string | RegExp) =>
  within.getByRole("button", { name, exact: typeof name === "string" });

/** Presses a control as a keyboard does. */
async function press(control: Locator): Promise<void> {
  await control.focus();
  await control.press("Enter");
}

const hasFocus = (control: Locator) =>
  eventually(() => control.evaluate((element) => element === document.activeElement)).toBe(true);

/** @returns where the page's top edge stands, 0 where the header is in sight */
const scrolled = (page: Page) => page.evaluate(() => scrollY);

describe("the focus after an action of the list of tests", () => {
  it("goes into the question, back to what asked it, and behind the test that was deleted", async () => {
    const page = await open("/bench");
    const rows = page.locator(".bench-test");
    await rows.nth(2).waitFor();
    const second = (await rows.nth(1).locator("a").first().textContent()) ?? "";
    const first = rows.first();
    await press(button(first, /^Delete /));
    await hasFocus(button(first, "Keep it"));
    await page.keyboard.press("Enter");
    await hasFocus(button(first, /^Delete /));
    await page.keyboard.press("Enter");
    await press(button(first, "Delete it"));
    await eventually(() => first.locator("a").first().textContent()).toBe(second);
    await hasFocus(first.locator("a").first());
  });
});

describe("the focus after an action of a test form", () => {
  it("goes to the reason, back to the row, and to the row behind the one that was removed", async () => {
    const page = await open("/bench/new/pull");
    for (const n of [1, 2]) {
      await page.getByLabel(`pull ${n}, held`).fill(`${400 + n}`);
      await button(page, "Add pull").click();
    }
    await press(button(page, "Set aside pull 1"));
    await hasFocus(page.getByLabel("Why pull 1 is set aside"));
    await press(button(page, "Count again pull 1"));
    await hasFocus(button(page, "Set aside pull 1"));
    await press(button(page, "Remove pull 1 from the form"));
    await hasFocus(page.getByLabel("pull 1, held"));
    expect(await page.getByLabel("pull 1, held").inputValue()).toMatch(/^402/);
  });

  it("goes to the content, shown from its start, where the form is discarded", async () => {
    const page = await open("/bench/new/curve");
    await page.getByLabel("Title").fill("to be discarded");
    await button(page, "Discard").scrollIntoViewIfNeeded();
    await press(button(page, "Discard"));
    await page.locator(".bench-test").first().waitFor();
    await hasFocus(page.locator("main"));
    expect(await scrolled(page)).toBe(0);
  });
});

describe("the focus after an action of a part's form", () => {
  it("goes into the question and back to what asked it", async () => {
    const page = await open("/parts/rotors/swept-nine");
    await press(button(page, "Delete"));
    await hasFocus(button(page, "Keep it"));
    await page.keyboard.press("Enter");
    await hasFocus(button(page, "Delete"));
  });
});

describe("the focus after an action of Match", () => {
  it("goes on from a setting that was put back, and from all of them", async () => {
    const page = await open("/match/pane-crawler?mass=0.2&duty=0.9");
    const mass = page.locator('[data-handle="mass"]');
    await press(button(mass, /^back/));
    await hasFocus(
      page
        .locator('[data-handle="mass"] ~ *, .handle-slot:has([data-handle="wheelFriction"]) input[type=text]')
        .first(),
    );
    await press(button(page, "Reset all"));
    await eventually(() =>
      page.evaluate(() => document.activeElement?.closest(".match-handles") !== null),
    ).toBe(true);
  });

  it("goes back to what opened the form for a new build, where that is cancelled", async () => {
    const page = await open("/match/pane-crawler?mass=0.2");
    await press(button(page, "Save as a new build"));
    await hasFocus(page.getByLabel("Name of the new build"));
    await press(button(page, "Cancel"));
    await hasFocus(button(page, "Save as a new build"));
  });
});

describe("the focus after a reading is set aside in Curves", () => {
  it("goes to the button that takes it back, and from there to the reason", async () => {
    const page = await open("/curves/rotors/swept-nine");
    await page.locator(".chart-reader").first().focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    const panel = page.getByRole("region", { name: "The chosen reading" });
    await panel.getByRole("textbox").fill("hose came off");
    await press(button(panel, "Set it aside"));
    await hasFocus(button(panel, "Take it back"));
    await page.keyboard.press("Enter");
    await hasFocus(panel.getByRole("textbox"));
  });
});

describe("the focus after a search is asked for", () => {
  it("stays on the button, and an unpinned combination hands it to the next", async () => {
    const page = await open("/choose");
    const solve = button(page, "Solve them");
    await press(solve);
    await page.locator(".choose-table tbody tr.choose-row th").first().waitFor();
    await hasFocus(solve);
    for (const row of [0, 1])
      await button(page.locator(".choose-table tbody tr.choose-row").nth(row), "pin").click();
    const pinned = page.getByRole("region", { name: "Pinned combinations" });
    await eventually(() => pinned.locator("li").count()).toBe(2);
    await press(button(pinned, "unpin A"));
    await eventually(() => pinned.locator("li").count()).toBe(1);
    await hasFocus(pinned.locator("li button").first());
  });
});

describe("the focus after the demo is asked to go", () => {
  it("goes into the question, and back to what asked it", async () => {
    const page = await open("/match");
    await press(button(page, "Start an empty bench"));
    await hasFocus(button(page, "Keep the demo"));
    await page.keyboard.press("Enter");
    await hasFocus(button(page, "Start an empty bench"));
  });
});

describe("another view", () => {
  it.each(["Attitudes", "Run-down", "Choose"])(
    "%s, asked for far down the page: is shown from its start, the header in sight, its content in focus",
    async (name) => {
      const page = await open("/bench");
      await page.locator(".bench-test").nth(5).waitFor();
      await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
      await press(page.getByRole("link", { name, exact: true }));
      await eventually(() => page.title()).toMatch(name);
      await hasFocus(page.locator("main"));
      expect(await scrolled(page)).toBe(0);
    },
  );
});
