import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { LAPTOP, PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

const open = (path: string, options = {}) => screens.open(server.address + path, options);
const textOf = async (locator: Locator) => (await locator.textContent()) ?? "";
const answer = (page: Page) => textOf(page.locator("main h1"));
const row = (page: Page, title: string) => page.locator(".attitude-table tbody tr", { hasText: title });
const field = (page: Page, label: string) => page.locator(".field", { hasText: label });

/** Types a new attitude into its form and sends it. */
async function add(page: Page, name: string, degrees: string): Promise<void> {
  const form = page.locator("form.attitude-add");
  await form.getByLabel("Name").fill(name);
  await form.getByLabel(/^Degrees/).fill(degrees);
  await form.getByRole("button", { name: "Add to the build" }).click();
}

/** Stores a record. @returns its id */
async function record(collection: string, id: string, data: unknown): Promise<string> {
  const response = await fetch(`${server.address}/api/v1/${collection}`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(data),
  });
  expect(response.status, id).toBe(201);
  return ((await response.json()) as { id: string }).id;
}

/** @returns the build as the book has it */
async function storedBuild(id: string): Promise<Record<string, unknown>> {
  const response = await fetch(`${server.address}/api/v1/builds/${id}`);
  return ((await response.json()) as { data: Record<string, unknown> }).data;
}

describe("Attitudes", () => {
  it("opens from the navigation, with the demo, and says what it comes to and where it needs most", async () => {
    const page = await open("/match");
    await page.getByRole("navigation").getByRole("link", { name: "Attitudes" }).click();
    await page.locator(".attitudes").waitFor();
    await eventually(() => answer(page)).toMatch(
      /^Holds everywhere it has to go; the overhang over the putty line is the tightest\.$/,
    );
    await eventually(() => textOf(page.locator(".attitudes-answer"))).toMatch(
      /^Parked it needs most at \d+°: \d+\sg .* It makes \d+\sg/,
    );
    await eventually(() => page.locator("svg[role=img]").getAttribute("aria-label")).toMatch(
      /Half-rose .*\sg /,
    );
    await eventually(() => textOf(row(page, "Wall 90°"))).toMatch(/×.*holds/);
  });

  it("keeps an attitude of 153.5°, added with a name, through a reload, and takes it out again", async () => {
    const page = await open("/attitudes/pane-crawler");
    await add(page, "Gable pane", "153,5°");
    await row(page, "Gable pane 153.5°").waitFor();
    await add(page, "Gable pane", "20");
    await eventually(() => textOf(field(page, "Name").locator(".field-error"))).toMatch(
      /one of its attitudes already/,
    );
    await page.reload();
    await row(page, "Gable pane 153.5°").waitFor();
    await eventually(() => page.locator("form.attitude-add").getByLabel("Name").inputValue()).toBe("");
    await eventually(() =>
      page.locator(".layer-rim-names text", { hasText: "Gable pane 153.5°" }).count(),
    ).toBe(1);
    await page.getByRole("button", { name: "remove Gable pane" }).click();
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByRole("button", { name: "remove Gable pane" }).click();
    await page.getByRole("button", { name: "Remove it" }).click();
    await row(page, "Gable pane").waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await row(page, "Gable pane 153.5°").waitFor();
    await page.getByRole("button", { name: "remove Gable pane" }).click();
    await page.getByRole("button", { name: "Remove it" }).click();
    await row(page, "Gable pane").waitFor({ state: "detached" });
    await page.reload();
    await row(page, "Ceiling").waitFor();
    expect(await row(page, "Gable pane").count()).toBe(0);
  });

  it("answers in words and marks the spoke, with another angle typed or slid, and keeps answer and book on nonsense", async () => {
    const page = await open("/attitudes/pane-crawler");
    const asked = page.locator(".attitude-asked");
    await page.getByLabel("Inclination, °").fill("70");
    await eventually(() => textOf(asked)).toMatch(
      /^At 70°, a slope, it needs .* parked and .* driving nose uphill/,
    );
    await eventually(() => page.locator(".layer-rim-names text", { hasText: "asked 70°" }).count()).toBe(1);
    await page.getByLabel("Inclination, slider").focus();
    await page.keyboard.press("ArrowRight");
    await eventually(() => textOf(asked)).toMatch(/^At 70\.5°/);
    await page.locator(".attitude-ask").getByRole("button", { name: "Show working" }).click();
    await eventually(() => textOf(page.getByRole("dialog"))).toMatch(/margin at 71°/);
    await page.getByRole("button", { name: "Close" }).click();
    await page.getByRole("dialog").waitFor({ state: "detached" });
    const before = await textOf(asked);
    await page.getByLabel("Inclination, °").fill("a lot");
    await eventually(() => textOf(field(page, "Inclination").locator(".field-error"))).toMatch(
      /Read "a lot"/,
    );
    expect(await textOf(asked)).toBe(before);
    const rows = await page.locator(".attitude-table tbody tr").count();
    for (const text of ["steep", "200", "-5", ""]) {
      await add(page, "Nowhere", text);
      await eventually(() => textOf(field(page, "Degrees").locator(".field-error")), text).toMatch(
        /for example "153.5°"/,
      );
      await page
        .locator("form.attitude-add")
        .getByLabel(/^Degrees/)
        .fill("10");
      await page.locator("form.attitude-add .field-error").waitFor({ state: "detached" });
    }
    expect(await page.locator(".attitude-table tbody tr").count()).toBe(rows);
    expect(JSON.stringify(await storedBuild("pane-crawler"))).not.toContain("Nowhere");
  });

  it("carries what is tried in Match along, from one view to the other and back, and says so", async () => {
    const page = await open("/match/pane-crawler?mass=1.2");
    await page.getByRole("navigation").getByRole("link", { name: "Attitudes" }).click();
    await page.locator(".attitudes").waitFor();
    await eventually(() => answer(page)).toMatch(/^Falls/);
    await page.getByRole("link", { name: "tried in Match" }).click();
    await page.locator(".match").waitFor();
    await eventually(() => new URL(page.url()).search).toBe("?mass=1.2");
  });

  it("says what can be said, what is missing and the test that gives it, with a surface without friction, and keeps the view", async () => {
    const surface = await record("surfaces", "bare-board", { name: "Bare board", roughness: 0 });
    const data = await storedBuild("pane-crawler");
    const build = await record("builds", "on-bare-board", { ...data, name: "On bare board", surface });
    const page = await open(`/attitudes/${build}`);
    await page.locator("main h1").waitFor();
    await eventually(() => answer(page)).toMatch(
      /Whether it slides isn't known: parked anywhere .* it needs μ of at least/,
    );
    await page.getByRole("link", { name: "Log a friction test" }).waitFor();
    expect(await page.locator("svg[role=img]").count()).toBe(0);
  });

  it("tells torque, share of stall and the gear that would do, with a weak drive typed, and keeps none of it", async () => {
    const page = await open("/attitudes/pane-crawler");
    await page.locator("summary", { hasText: "Torque to climb" }).click();
    const drive = page.locator(".attitude-drive");
    for (const [label, text] of [
      [/^Wheel diameter/, "32"],
      [/^Drive motors/, "2"],
      [/^Gear ratio/, "10"],
      [/^Gear efficiency/, "60"],
      [/^Stall torque/, "1"],
    ] as const)
      await drive.getByLabel(label).fill(text);
    await eventually(() => textOf(drive)).toMatch(
      /mN·m a motor at \d+°.*above half of stall.*gear ratio of [\d.]+ or more/,
    );
    await drive.getByLabel(/^Drive motors/).fill("1.5");
    await eventually(() => textOf(drive.locator(".field-error"))).toMatch(/whole number, 1 to 16/);
  });

  it("reads the half-rose by angle, with the arrow keys or a touch, asks about the one chosen, and saves the numbers as CSV", async () => {
    const page = await open("/attitudes/pane-crawler", { hasTouch: true });
    const reader = page.getByRole("slider", { name: /^Angles/ });
    await reader.focus();
    await page.keyboard.press("End");
    await eventually(() => reader.getAttribute("aria-valuetext")).toMatch(
      /^180°, the ceiling, Needed parked: \d+\sg \(.*tips first\), .*Made: \d+\sg/,
    );
    await page.keyboard.press("PageUp");
    await eventually(() => reader.getAttribute("aria-valuetext")).toMatch(/^170°/);
    await page.keyboard.press("Enter");
    await eventually(() => textOf(page.locator(".attitude-asked"))).toMatch(/^At 170°/);
    const disc = await page.locator(".layer-ground").boundingBox();
    if (!disc) throw new Error("The half-rose is not on the screen.");
    await page.touchscreen.tap(disc.x + 0.9 * disc.width, disc.y + disc.height / 2);
    await eventually(() => reader.getAttribute("aria-valuetext")).toMatch(/^9[01]°|^89°|^90°/);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "CSV", exact: true }).click(),
    ]);
    const lines = readFileSync(await download.path(), "utf8").split("\r\n");
    expect(lines[0]).toMatch(/^attitude,angle \[°\],made \[g\]/);
    expect(lines.find((line) => line.startsWith("Wall,90,"))).toBeDefined();
  });

  it.each([
    ["a laptop", LAPTOP],
    ["a phone", PHONE],
  ])(
    "lets no label lie on another and never scrolls sideways, on %s, with every demo build",
    async (_, viewport) => {
      const page = await open("/attitudes", { viewport });
      for (const id of ["pane-crawler", "ridge-runner", "roof-crawler"]) {
        await page.locator(".build-picker select").selectOption(id);
        await page.waitForURL(new RegExp(id));
        const { name } = await storedBuild(id);
        await page.locator(`svg[role=img][aria-label*="${name} needs"]`).waitFor();
        await page.locator(".layer-names text").first().waitFor();
        expect(await page.evaluate(overlapping), id).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
      }
    },
  );

  it("shortens names that are too long and keeps their degrees, on a phone, with twelve attitudes of one's own", async () => {
    const data = await storedBuild("pane-crawler");
    const attitudes = Array.from({ length: 12 }, (_, i) => ({
      name: `A pane under the ridge of the palm house, number ${i + 1}`,
      angle: 140 + i,
    }));
    const build = await record("builds", "many-panes", { ...data, name: "Many panes", attitudes });
    const page = await open(`/attitudes/${build}`, { viewport: PHONE });
    await page.locator(".layer-names text").first().waitFor();
    expect(await page.evaluate(overlapping)).toEqual([]);
    await eventually(() =>
      page.locator(".layer-rim-names text", { hasText: /^A pane.*… 15\d°$/ }).count(),
    ).toBe(2);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  });
});

/** Runs in the page: pairs of labels of the picture that lie on each other or leave the screen. */
function overlapping(): string[] {
  const texts = [...document.querySelectorAll(".chart svg text")];
  const boxes = texts.map((text) => ({ text: text.textContent ?? "", box: text.getBoundingClientRect() }));
  const SLACK = 2.5;
  const pairs = boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => {
      const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      return across > SLACK && down > SLACK ? [`${a.text} on ${b.text}`] : [];
    }),
  );
  return [
    ...pairs,
    ...boxes.filter(({ box }) => box.right > innerWidth).map(({ text }) => `${text} cut off`),
  ];
}
