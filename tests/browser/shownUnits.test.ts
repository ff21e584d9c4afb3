import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import type { StoredOf } from "#shared/model/record.ts";
import { UNIT_SETS } from "#shared/units/showing.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const server = useOwnServer();
const screens = useScreens({ server });

const main = async (page: Page) => (await page.locator("main").textContent()) ?? "";

async function savedCsv(page: Page): Promise<string> {
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "CSV", exact: true }).first().click();
  return readFileSync(await (await downloading).path()).toString();
}

/** What each screen says where it shows a quantity, in either set. */
const SAID = {
  metric: {
    length: /\d\u202fmm\b/,
    mass: /\d\u202fg\b/,
    csv: "what,flow [L/s],suction [Pa],pull [g],note",
    held: "g",
  },
  inch: {
    length: /\d\u202fin\b/,
    mass: /\d\u202foz\b/,
    csv: "what,flow [cfm],suction [inH2O],pull [oz],note",
    held: "oz",
  },
} as const;
type SetName = keyof typeof SAID;

/** Holds form, chart, its file, table, working and sheet to one set of units, and to none of the other. */
async function holdsTo(page: Page, set: SetName): Promise<void> {
  const { length, mass, csv, held } = SAID[set];
  const other = SAID[set === "inch" ? "metric" : "inch"];
  await page.goto("/bench/new/pull");
  await eventually(
    () => page.getByLabel("pull 1, held").getAttribute("placeholder"),
    `form, ${set}`,
  ).toContain(held);
  await page.goto("/match/pane-crawler");
  await eventually(() => savedCsv(page).then((text) => text.split("\r\n")[0]), `chart, ${set}`).toBe(csv);
  await page.getByText("Show working", { exact: true }).click();
  await eventually(() => page.locator(".working-figures").textContent(), `working, ${set}`).toMatch(
    set === "inch" ? /\sinH2O[\s\S]*\soz\s\(/ : /\sPa[\s\S]*\sg\s\(/,
  );
  await page.goto("/sheet/pane-crawler");
  await eventually(() => main(page), `sheet, ${set}`).toMatch(mass);
  await eventually(() => main(page), `sheet, ${set}`).toMatch(length);
  expect(await main(page), `sheet, ${set}`).not.toMatch(other.length);
  expect(await main(page), `sheet, ${set}`).not.toMatch(other.mass);
}

it("the set of units that a book is shown in: form, chart, file, working and sheet follow it, and a bare number means it", async () => {
  const page = await screens.open("/bench");
  await holdsTo(page, "metric");
  await page.goto("/bench/units");
  await page.getByRole("radio", { name: /^Inch/ }).check();
  await eventually(() => page.locator("main h1").textContent()).toMatch(/in inches, ounces/);
  await page.goto("/bench/new/pull");
  await page.getByLabel("pull 1, held").fill("14.5");
  await page.getByLabel("Title").fill("pull in ounces");
  await page.getByRole("button", { name: "Save the test" }).click();
  await eventually(() => main(page)).toMatch(/Saved: pull in ounces|Is this right/);
  const confirm = page.getByRole("button", { name: "It is right, save it" });
  if ((await confirm.count()) > 0) await confirm.click();
  await page.locator(".bench-saved").waitFor();
  const answer = await fetch(`${server.address}/api/v1/tests?q=pull%20in%20ounces&limit=5`);
  const { items } = (await answer.json()) as { items: StoredOf<"tests">[] };
  expect(items.map(({ data }) => data.rows[0])).toMatchObject([{ held: { value: 14.5, unit: "oz" } }]);
  await holdsTo(page, "inch");
});

it.each([
  { from: "metric", to: "inch", unit: "mm" },
  { from: "inch", to: "metric", unit: "in" },
] as const)(
  "a bare number in an open form, typed in a $from book that is then shown in $to: stays what it was",
  async ({ from, to, unit }) => {
    const showIn = async (set: SetName) => {
      const headers = { "Content-Type": "application/json" };
      const body = JSON.stringify(UNIT_SETS[set]);
      const answer = await fetch(`${server.address}/api/v1/bench/units`, { method: "PUT", headers, body });
      expect(answer.status).toBe(200);
    };
    await showIn(from);
    const part = await screens.open("/parts/skirts/new");
    const perimeter = part.getByRole("textbox", { name: /^Length along the lip/ }).first();
    await perimeter.pressSequentially("12");
    const test = await part.context().newPage();
    await test.goto("/bench/new/leak");
    const gap = test.getByLabel("Shim", { exact: true });
    await gap.fill("0.5");
    expect([await perimeter.inputValue(), await gap.inputValue()]).toEqual(["12", "0.5"]);
    await showIn(to);
    await eventually(() => perimeter.inputValue()).toBe(`12 ${unit}`);
    await eventually(() => gap.inputValue()).toBe(`0.5 ${unit}`);
    await test.reload();
    await eventually(() => gap.inputValue(), "after a reload").toBe(`0.5 ${unit}`);
  },
);
