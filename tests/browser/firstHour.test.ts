import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

type Typed = { readonly value: number; readonly unit: string };
type Row = Readonly<Record<string, Typed | boolean | readonly number[]>>;

/** Readings of the demo's rig stand for the maker's own: invented, and of one vehicle. */
const TESTS = JSON.parse(
  readFileSync(new URL("../../seed-data/tests.json", import.meta.url), "utf8"),
) as readonly { readonly id: string; readonly data: { readonly rows: readonly Row[] } }[];
const rowsOf = (id: string) => TESTS.find((test) => test.id === id)?.data.rows ?? [];
const text = (row: Row, key: string) => {
  const { value, unit } = row[key] as Typed;
  return `${value} ${unit}`;
};

const PAGE = readFileSync(new URL("../../docs/first-hour.md", import.meta.url), "utf8");
const headings = [...PAGE.matchAll(/^(\d+)\. \[?\*\*([^*.]+)\.?\*\*/gm)].map(([, number, words]) => [
  Number(number),
  words,
]);

const fill = (page: Page, label: string | RegExp, words: string) =>
  page.getByLabel(label).first().fill(words);
const cell = (page: Page, name: string, words: string) => page.getByLabel(name, { exact: true }).fill(words);

/** From Match to the form that its list offers next. */
async function begin(page: Page, button: string): Promise<void> {
  await page.goto(`${server.address}/match`);
  const next = page.locator(".steps .button.primary");
  await eventually(() => next.textContent()).toBe(button);
  await next.click();
}

async function savePart(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.waitForURL(/\/parts\?/);
}

async function saveTest(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Save the test" }).click();
  await page.locator(".bench-saved").waitFor();
}

/** Types every row of a test, each into the line that the form adds for it. */
async function typeRows(
  page: Page,
  one: string,
  rows: readonly Row[],
  type: (name: string, row: Row) => Promise<void>,
) {
  for (const [i, row] of rows.entries()) {
    if (i > 0) await page.getByRole("button", { name: `Add ${one}` }).click();
    await type(`${one} ${i + 1}`, row);
  }
}

async function parts(page: Page): Promise<void> {
  await begin(page, "Add a rotor");
  await fill(page, "Name", "Swept nine");
  await fill(page, /^Diameter/, "44 mm");
  await savePart(page);
  await begin(page, "Add a motor");
  await fill(page, "Name", "Bell motor");
  await fill(page, /^Mass/, "21 g");
  await savePart(page);
  await begin(page, "Add a pack");
  await fill(page, "Name", "Two cells");
  await fill(page, "Cells in series", "2");
  await fill(page, /^Capacity/, "450 mAh");
  await fill(page, /^Resistance/, "28 mΩ");
  await fill(page, /voltage under load/, "3.2 V");
  await page.getByLabel(/^Chemistry/).selectOption("lithium-ion");
  await page.getByText("Estimates", { exact: true }).click();
  await page.getByRole("checkbox", { name: /^Resistance/ }).check();
  await savePart(page);
  await begin(page, "Add a skirt");
  await fill(page, "Name", "Square lip");
  await fill(page, "Length along the lip", "36 cm");
  await fill(page, "Area inside the lip", "79 cm²");
  await fill(page, "Width of the lip", "3 mm");
  await fill(page, "Gap as set", "0.6 mm");
  await savePart(page);
  await begin(page, "Add a surface");
  await fill(page, "Name", "Side pane");
  await savePart(page);
}

async function motorTest(page: Page): Promise<void> {
  await begin(page, "Log a motor test");
  await typeRows(page, "run", rowsOf("demo-01-motor"), async (name, row) => {
    for (const key of ["voltage", "current", "speed"]) await cell(page, `${name}, ${key}`, text(row, key));
    if (row.noLoad === true) await page.getByLabel(`${name}, no load`, { exact: true }).check();
  });
  await saveTest(page);
}

async function curveTest(page: Page): Promise<void> {
  await begin(page, "Log a curve test");
  await page.getByLabel("Motor that turned it").selectOption({ label: "Bell motor" });
  await page.getByRole("button", { name: "Describe the holes" }).click();
  await page.getByRole("button", { name: "Add another kind of hole" }).click();
  for (const [i, [count, diameter]] of [
    ["12", "4 mm"],
    ["36", "10 mm"],
  ].entries()) {
    await cell(page, `Hole ${i + 1}, count`, count);
    await cell(page, `Hole ${i + 1}, diameter`, diameter);
    await cell(page, `Hole ${i + 1}, thickness`, "3 mm");
  }
  await typeRows(page, "point", rowsOf("demo-04-curve"), async (name, row) => {
    for (const key of ["speed", "pressure", "current"]) await cell(page, `${name}, ${key}`, text(row, key));
    for (const [i, count] of (row.open as readonly number[]).entries())
      await cell(page, `${name}, open holes of kind ${i + 1}`, String(count));
  });
  await saveTest(page);
}

async function frictionTest(page: Page): Promise<void> {
  await begin(page, "Log a friction test");
  await typeRows(page, "slide", rowsOf("demo-06-friction"), async (name, row) => {
    for (const key of ["held", "slid"]) await cell(page, `${name}, ${key}`, text(row, key));
  });
  await saveTest(page);
}

async function pullTest(page: Page): Promise<void> {
  await begin(page, "Log a pull test");
  await fill(page, "Rig mass", "95 g");
  await typeRows(page, "pull", rowsOf("demo-12-pull"), async (name, row) => {
    await cell(page, `${name}, held`, text(row, "held"));
    await cell(page, `${name}, let go`, text(row, "letGo"));
    await cell(page, `${name}, voltage`, text(row, "voltage"));
  });
  await saveTest(page);
}

async function build(page: Page): Promise<void> {
  await begin(page, "Put a build together");
  await fill(page, "Name", "First crawler");
  for (const label of ["Rotor or propeller", "Motor", "Pack", /^Skirt/, "Surface"])
    await page.getByLabel(label).first().selectOption({ index: 1 });
  await fill(page, /^Rotor diameter/, "44 mm");
  await fill(page, /^Mass, everything on board/, "560 g");
  await savePart(page);
}

describe("docs/first-hour.md", () => {
  it("its steps to Match: are those that the test below does, in this order", () => {
    expect(headings.slice(0, 7)).toEqual([
      [1, "Look at the demo"],
      [2, "Enter your parts"],
      [3, "Motor test"],
      [4, "Curve test"],
      [5, "Friction test"],
      [6, "Pull test"],
      [7, "Match"],
    ]);
  });

  it("followed on an empty bench, each step by the button that Match offers next: ends with a sentence and a chart", async () => {
    const page = await screens.open(`${server.address}/`);
    const gap = page.locator("[data-handle=gap] input[type=text]");
    await gap.fill("0.5 mm");
    await eventually(() => page.locator("main h1").textContent()).toMatch(/^Holds/);
    await gap.fill("1.2 mm");
    await eventually(() => page.locator("main h1").textContent()).toMatch(/^Burns/);
    await page.getByRole("button", { name: "Start an empty bench" }).click();
    await page.getByRole("button", { name: "Yes, start empty" }).click();
    await page.locator(".steps").first().waitFor();
    await parts(page);
    await motorTest(page);
    await curveTest(page);
    await frictionTest(page);
    await pullTest(page);
    await build(page);
    await page.goto(`${server.address}/match`);
    await eventually(() => page.locator("main h1").textContent()).toMatch(
      /^(Holds|Falls|Burns|Bursts|Not sure|Over a rating|Can't climb)/,
    );
    await eventually(() => page.locator("svg[role=img]").first().getAttribute("aria-label")).toMatch(
      /They meet at .* pulls \d+\sg\./,
    );
    await eventually(() => page.locator(".layer-levels, .match-picture svg text").count()).toBeGreaterThan(3);
  }, 300_000);
});
