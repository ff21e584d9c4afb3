import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

const SCOUT = "prop-scout";
const open = (path: string, options = {}) => screens.open(server.address + path, options);
const answer = async (page: Page) => (await page.locator("main h1").textContent()) ?? "";
const picture = (page: Page) => page.locator(".match-picture svg[role=img]").first();

async function put(path: string, body: unknown): Promise<string> {
  const response = await fetch(`${server.address}/api/v1${path}`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  });
  expect(response.status).toBe(201);
  return ((await response.json()) as { id: string }).id;
}

describe("a build that a propeller presses on", () => {
  it("in Match: thrust against speed, with its answer, its margins, and no gap to drag", async () => {
    const page = await open(`/match/${SCOUT}`);
    await eventually(() => answer(page)).toMatch(
      /^(Holds|Falls|Burns|Bursts|Not sure|Over a rating|Can't climb)/,
    );
    await eventually(() => picture(page).getAttribute("aria-label")).toMatch(
      /Thrust .* presses with \d+\sg\./,
    );
    await eventually(() => page.locator("[data-handle=gap]").count()).toBe(0);
    await eventually(() => page.getByText("No gap to set").isVisible()).toBe(true);
    await eventually(() => page.locator(".attitude-strip li").count()).toBeGreaterThan(2);
    await page.getByText("Show working", { exact: true }).first().click();
    await eventually(() => page.getByText("thrust", { exact: false }).count()).toBeGreaterThan(0);
  });

  it("in Match, with its mass tried: the answer follows while the address keeps it", async () => {
    const page = await open(`/match/${SCOUT}?mass=0.6`);
    await eventually(() => page.locator(".verdict-detail").textContent()).toMatch(
      /^The pull is too small as well/,
    );
    await eventually(() => page.locator(".layer-lines .chart-line.tone-quiet").count()).toBe(1);
  });

  it("in Match on a phone: no sideways scrolling, the mass handle within the thumb's reach", async () => {
    const page = await open(`/match/${SCOUT}`, { viewport: PHONE });
    await eventually(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
    await eventually(() => page.locator("[data-handle=mass] input[type=range]").isVisible()).toBe(true);
  });

  it("laid over a ducted build: says why it can't be, and the other one is drawn", async () => {
    const page = await open(`/match/pane-crawler?over=${SCOUT},roof-crawler`);
    await eventually(() => page.getByText("a propeller has no fan curve to lay over").isVisible()).toBe(true);
    await eventually(() => page.locator(".overlay-table tbody tr").count()).toBe(1);
  });

  it("in Attitudes and Run-down: answers as any other", async () => {
    const attitudes = await open(`/attitudes/${SCOUT}`);
    await eventually(() => answer(attitudes)).toMatch(
      /^(Holds|Falls|Burns|Bursts|Not sure|Over a rating|Can't climb)/,
    );
    await attitudes.locator("summary", { hasText: "Torque to climb" }).click();
    const run = await open(`/run-down/${SCOUT}`);
    await run.locator(".answer-figures", { hasText: /minutes|no run to rely on/ }).waitFor();
  });

  it("without a thrust test: names it in every view, with the button that logs one", async () => {
    const rotor = await put("/rotors", {
      name: "Untested pusher",
      kind: "propeller",
      sizes: [{ diameter: 0.1 }],
    });
    const known = await fetch(`${server.address}/api/v1/builds/${SCOUT}`);
    const { data } = (await known.json()) as { data: object };
    const id = await put("/builds", { ...data, name: "Untested scout", rotor });
    for (const view of ["match", "attitudes", "run-down"]) {
      const page = await open(`/${view}/${id}`);
      await page
        .getByText(/No thrust test of Untested pusher is logged/)
        .first()
        .waitFor();
      await eventually(() => page.getByRole("link", { name: "Log a thrust test" }).count()).toBeGreaterThan(
        0,
      );
    }
    const curves = await open(`/curves/rotors/${rotor}`);
    await eventually(() => answerOrTitle(curves)).toMatch(/not known yet/);
  });
});

const answerOrTitle = async (page: Page): Promise<string> => (await page.locator("main").textContent()) ?? "";

describe("a thrust test on the bench", () => {
  it("typed in: shows C_T and C_P while typing, is saved, and stands in the list with its line", async () => {
    const page = await open("/bench/new/thrust");
    await page.locator("input[placeholder=rpm]").first().fill("12000");
    await page.locator("input[placeholder=g]").first().fill("140");
    await page.locator("input[placeholder=A]").first().fill("5");
    await eventually(() => page.locator(".bench-running").textContent()).toMatch(/C_?T\s*0\.\d/);
    await page.getByRole("button", { name: "Save the test" }).click();
    await page
      .getByText(/1 reading, 140\u202fg at 12000\u202frpm/)
      .first()
      .waitFor();
  });
});
