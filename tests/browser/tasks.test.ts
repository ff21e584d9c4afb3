import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { lookedThrough, settled } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { LAPTOP, PHONE, useScreens } from "./support/page.ts";

/** What people come for, from beginning to end, on a laptop and on a phone; any error on the console fails. */
const screens = useScreens({ keep: true });
const server = useOwnServer();

const at = (path: string) => server.address + path;
const verdict = async (page: Page) => (await page.locator("main h1").textContent()) ?? "";
const screen = (page: Page, name: string) =>
  page.locator(".shell-links").getByRole("link", { name, exact: true });
/** Of the build on the screen, as the address names it. */
const buildOf = (page: Page) => new URL(page.url()).pathname.split("/")[2];

/** How a person presses something. */
type Press = (target: Locator) => Promise<void>;
const byPointer: Press = (target) => target.click();

/** More stops than any page has. */
const MOST_STOPS = 400;

/** Goes on by Tab until the target has the focus, then Enter: no pointer at any moment. */
const byKeys: Press = async (target) => {
  await target.waitFor();
  const page = target.page();
  const focused = () => target.evaluate((element) => element === document.activeElement);
  for (let stop = 0; stop < MOST_STOPS && !(await focused()); stop++) await page.keyboard.press("Tab");
  expect(await focused(), "reached by Tab").toBe(true);
  await page.keyboard.press("Enter");
};

async function pagesPrinted(page: Page): Promise<number> {
  const pdf = (await page.pdf({ format: "A4", preferCSSPageSize: true })).toString("latin1");
  return pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
}

describe("log a pull on the phone and see the verdict change", () => {
  it("on the phone where it is logged, and on the laptop that has the build open", async () => {
    const laptop = await screens.open(at("/match/pane-crawler"), { viewport: LAPTOP });
    await eventually(() => verdict(laptop)).toMatch(/^Holds/);
    const phone = await screens.open(at("/match/pane-crawler"), { viewport: PHONE, hasTouch: true });
    await lookedThrough(phone);
    await phone.getByRole("link", { name: /^log it ?: Six pulls along/ }).tap();
    const load = phone.getByLabel("Load added").first();
    for (let pull = 0; pull < 3; pull++) {
      await load.fill("400");
      await phone.getByRole("button", { name: "Held at 400 g" }).tap();
      await load.fill("30");
      await phone.getByRole("button", { name: "Let go at 430 g" }).tap();
      await phone.getByLabel(`Voltage, pull ${pull + 1}`).fill("7.4");
    }
    await phone.getByRole("button", { name: "Save the test" }).tap();
    await phone.locator(".bench-saved").waitFor();
    await eventually(() => verdict(laptop)).not.toMatch(/^Holds/);
    await phone.locator(".shell-places").getByRole("link", { name: "Build" }).tap();
    await eventually(() => verdict(phone)).toBe(await verdict(laptop));
  });
});

describe("find out why it falls off the overhang and mend it", () => {
  it.each([
    ["on a laptop, by the keyboard alone", LAPTOP, byKeys],
    ["on a phone", PHONE, byPointer],
  ] as const)(
    "%s: the reason down to its readings, a way out tried, and kept as a build",
    async (_, viewport, press) => {
      const page = await screens.open(at("/match/roof-crawler"), { viewport });
      await eventually(() => verdict(page)).toMatch(/^Falls from the overhang/);

      await press(screen(page, "Attitudes"));
      const margin = page
        .locator(".attitude-table tbody tr", { hasText: /^Worst/ })
        .locator(".worked")
        .first();
      await press(margin);
      const working = page.locator(".working-dialog");
      await working.locator("math").first().waitFor();
      await press(working.locator("summary", { hasText: "friction of the wheels" }));
      await press(working.locator(".working-tests summary").first());
      await eventually(() => working.locator(".working-tests tbody tr").count()).toBeGreaterThan(2);
      await page.keyboard.press("Escape");
      await working.waitFor({ state: "detached" });
      await eventually(() => margin.evaluate((element) => element === document.activeElement)).toBe(true);

      await press(screen(page, "Match"));
      await page.locator(".match .attitude-strip").waitFor();
      await lookedThrough(page);
      await page.locator('.ways[aria-busy="false"] .ways-list').waitFor();
      await press(page.getByRole("button", { name: /try it.*Mass/ }));
      await page.waitForURL(/mass=/);
      await eventually(() => verdict(page)).not.toMatch(/^Falls/);
      await press(page.getByRole("button", { name: "Save as a new build" }));
      const name = page.getByLabel("Name of the new build");
      await name.fill(`Roof crawler, lighter ${viewport.width}`);
      await name.press("Enter");
      await eventually(() => buildOf(page)).not.toBe("roof-crawler");
      await eventually(() => verdict(page)).not.toMatch(/^Falls/);
    },
  );
});

describe("choose a pair, check that it fits, print the sheet", () => {
  it.each([
    ["on a laptop", LAPTOP],
    ["on a phone", PHONE],
  ] as const)(
    "%s: a search, the best combination as a build, its stacks, two pages of paper",
    async (_, viewport) => {
      const page = await screens.open(at("/choose"), { viewport });
      await page.getByRole("button", { name: "Solve them" }).click();
      const first = page.locator(".choose-row").first();
      await first.waitFor();
      await first.locator("th").click();
      await page.getByRole("button", { name: "Open as a build" }).click();
      await eventually(() => new URL(page.url()).pathname).toMatch(/^\/match\/.+/);
      await page.locator(".match .attitude-strip").waitFor();
      const chosen = buildOf(page);

      await screen(page, "Fit-up").click();
      await eventually(() => new URL(page.url()).pathname).toBe(`/fit-up/${chosen}`);
      await eventually(() => verdict(page)).toMatch(/close|stack/i);

      await screen(page, "Sheet").click();
      await page.locator(".sheet").waitFor();
      await settled(page);
      expect(await page.locator(".sheet .verdict-band").count()).toBe(1);
      expect(await pagesPrinted(page)).toBe(2);
    },
  );
});

describe("size a rotor and make the build", () => {
  it.each([
    ["on a laptop", LAPTOP],
    ["on a phone", PHONE],
  ] as const)(
    "%s: the size that takes least, a build of it with a motor that comes near",
    async (_, viewport) => {
      const page = await screens.open(at("/size"), { viewport });
      await eventually(() => verdict(page)).toMatch(/ at [\d.]+\s?mm takes least: /);
      await page
        .getByRole("button", { name: /^Make a build of it/ })
        .first()
        .click();
      await eventually(() => new URL(page.url()).pathname).toMatch(/^\/match\/.+/);
      await eventually(() => page.locator("header select option:checked").first().textContent()).toMatch(
        /sized/,
      );
      await eventually(() => verdict(page)).toMatch(
        /^(Holds|Tight|Not sure|Burns|Bursts|Over a rating|Falls|Can't climb)/,
      );
    },
  );
});

/** The demo as it comes, whatever was logged before. */
async function demoAnew(): Promise<void> {
  for (const path of ["empty", "demo"]) {
    const headers = { "Content-Type": "application/json" };
    const answer = await fetch(at(`/api/v1/bench/${path}`), { method: "POST", headers, body: "{}" });
    expect(answer.ok, path).toBe(true);
  }
}

describe("log a pull on a laptop and see the verdict change", () => {
  it("in the table, by the keyboard alone", async () => {
    await demoAnew();
    const page = await screens.open(at("/match/pane-crawler"), { viewport: LAPTOP });
    await eventually(() => verdict(page)).toMatch(/^Holds/);
    await lookedThrough(page);
    await byKeys(page.getByRole("link", { name: /^log it ?: Six pulls along/ }));
    await page.getByLabel("pull 1, held").focus();
    for (let pull = 0; pull < 3; pull++) {
      for (const [text, key] of [
        ["400", "Tab"],
        ["430", "Tab"],
        ["7.4", "Enter"],
      ]) {
        await page.keyboard.type(text);
        await page.keyboard.press(key);
      }
    }
    await byKeys(page.getByRole("button", { name: "Save the test" }));
    await page.locator(".bench-saved").waitFor();
    await byKeys(screen(page, "Match"));
    await eventually(() => verdict(page)).toMatch(/^Not sure/);
  });
});
