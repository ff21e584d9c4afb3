import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { inputOfBuild } from "./support/inline.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const server = useOwnServer();
const screens = useScreens({ server });

const textOf = async (locator: Locator) => (await locator.textContent()) ?? "";
const answer = (page: Page) => textOf(page.locator("main h1"));

/** The answer once nothing is worked out any more. */
async function settledAnswer(page: Page): Promise<string> {
  await page.locator("main .how-sure").waitFor();
  await eventually(() => page.locator("main [aria-busy=true]").count()).toBe(0);
  return answer(page);
}

const handle = (page: Page, key: string) => page.locator(`[data-handle=${key}]`);
const slider = (page: Page, key: string) => handle(page, key).locator("input[type=range]");
const entry = (page: Page, key: string) => handle(page, key).locator("input[type=text]");

/** The demo's builds by what they are there for. */
async function buildNamed(pattern: RegExp): Promise<{ id: string; data: { name: string } }> {
  const response = await fetch(`${server.address}/api/v1/builds?limit=100`);
  const { items } = (await response.json()) as { items: { id: string; data: { name: string } }[] };
  const found = items.find((item) => pattern.test(item.data.name));
  if (!found) throw new Error(`The demo has no build ${pattern}.`);
  return found;
}

/** Waits until a change typed is worked out and stands in the address. */
async function changed(page: Page, key: string): Promise<void> {
  await page.waitForURL(new RegExp(`[?&]${key}=`));
  await eventually(() => textOf(handle(page, key))).toMatch(/was/);
}

/** Moves a slider's thumb with the mouse, as a hand does, from where it is to a value. */
async function drag(page: Page, key: string, to: number): Promise<void> {
  const control = slider(page, key);
  await control.scrollIntoViewIfNeeded();
  const box = await control.boundingBox();
  if (!box) throw new Error(`The slider ${key} is not on the screen.`);
  const [low, high, now] = await control.evaluate((input: HTMLInputElement) =>
    [input.min, input.max, input.value].map(Number),
  );
  const THUMB = 16;
  const at = (value: number) => box.x + THUMB / 2 + ((value - low) / (high - low)) * (box.width - THUMB);
  await page.mouse.move(at(now), box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(at(to), box.y + box.height / 2, { steps: 12 });
}

/** How a verdict's sentence begins, whatever the build comes to. */
const STATES = /^(Bursts|Burns|Falls|Can't climb|Over a rating|Not sure|Holds)/;

describe("Match", () => {
  it("opens with the demo, on a fresh start, and answers in words with its figures", async () => {
    const page = await screens.open("/");
    await eventually(() => answer(page)).toMatch(STATES);
    await eventually(() => page.getByText("Demo numbers, invented").isVisible()).toBe(true);
    await eventually(() => page.locator("svg[role=img]").first().getAttribute("aria-label")).toMatch(
      /They meet at .* pulls \d+\sg\./,
    );
  });

  it("burns in words, loses the wall and asks the server nothing, with the gap dragged from 0.5 to 1.2 mm, while it moves", async () => {
    const build = await buildNamed(/second rotor/);
    const page = await screens.open(`/match/${build.id}?gap=0.0005`);
    await eventually(() => answer(page)).toMatch(/^Holds everywhere/);
    // said last, and takes a line: the sliders lie still from here on
    await page.locator(".verdict-figures", { hasText: "%" }).waitFor();
    const asked: string[] = [];
    page.on("request", (request) => request.url().includes("/api/") && asked.push(request.url()));
    await drag(page, "gap", 1.2);
    await eventually(() => answer(page)).toMatch(/^Burns/);
    await page.mouse.up();
    expect(asked).toEqual([]);
    await eventually(async () => Number(await entry(page, "gap").inputValue())).toBeCloseTo(1.2, 1);
    const wall = page.locator(".attitude-strip li", { hasText: "Wall" });
    await eventually(() => textOf(wall)).toMatch(/falls/);
    await eventually(() => page.locator(".match-picture .layer-lines .tone-quiet").first().isVisible()).toBe(
      true,
    );
  });

  it("with three cells in series tried: burns, with its way out, and no view calls a margin good or says that it holds", async () => {
    for (const view of ["match", "attitudes", "run-down"]) {
      const page = await screens.open(`/${view}/pane-crawler?series=3`);
      await eventually(() => answer(page)).toMatch(
        /^Burns: the winding settles at \d+\s°C .* its limit is 120\s°C/,
      );
      await eventually(() => textOf(page.locator(".verdict-way"))).toMatch(
        /^Holds again from \d\d\s\d\d\d\srpm down: throttle \d\d\s%\./,
      );
      await page.locator(":is(table.holds, .attitude-strip) .void").first().waitFor();
      expect(await page.locator(":is(table.holds:not(.limit-table), .attitude-strip) .good").count()).toBe(0);
      expect(await textOf(page.locator("main"))).not.toMatch(/>\s?99\.9|\bholds everywhere|Sure to hold/i);
      await page.close();
    }
  });

  it("shows the figures of POST /predict, for the same numbers put in, keeps what is tried through a reload, and saves it as a build of its own", async () => {
    const build = await buildNamed(/second rotor/);
    const page = await screens.open(`/match/${build.id}`);
    await page.getByText("Show working", { exact: true }).click();
    const working = await textOf(page.locator(".working-figures .worked", { hasText: "working of pull" }));
    const shown = await textOf(page.locator(".attitude-tightest .margin"));
    const { suction, worst } = await predictedByServer(build.id);
    const newtons = /\(([\d.]+)\sN\)/.exec(working)?.[1];
    expect(Number(newtons)).toBeCloseToRelative(suction, 1e-4);
    expect(Number.parseFloat(shown)).toBeCloseTo(worst.parked.margin, 2);
    await entry(page, "gap").fill("0.9");
    await changed(page, "gap");
    const before = await settledAnswer(page);
    await page.reload();
    await page.locator("main h1").waitFor();
    await eventually(() => answer(page)).toBe(before);
    await eventually(() => entry(page, "gap").inputValue()).toBe("0.90");
    await eventually(() => page.locator(".build-picker select").inputValue()).toBe(build.id);
    await entry(page, "gap").fill("0.4");
    await eventually(() => page.url()).toMatch(/gap=0\.0004/);
    const tried = await settledAnswer(page);
    await page.getByRole("button", { name: "Save as a new build" }).click();
    await page.getByLabel("Name of the new build").fill("Crawler with a closer skirt");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await page.waitForURL(/crawler-with-a-closer-skirt/);
    await eventually(() => textOf(page.locator(".build-picker select option:checked"))).toBe(
      "Crawler with a closer skirt",
    );
    await eventually(() => answer(page)).toBe(tried);
    await eventually(() => entry(page, "gap").inputValue()).toBe("0.40");
  });

  it("takes numbers with units, says beside the field what is wrong with others and keeps the answer, and takes one setting back, then all", async () => {
    const page = await screens.open("/match");
    const before = await settledAnswer(page);
    await entry(page, "diameter").fill("2 in");
    await changed(page, "diameter");
    await entry(page, "mass").fill("1.2 kg");
    await changed(page, "mass");
    await entry(page, "mass").blur();
    await eventually(() => entry(page, "diameter").inputValue()).toBe("50.8");
    await eventually(() => entry(page, "mass").inputValue()).toBe("1200");
    await page.getByRole("button", { name: "Reset all" }).click();
    await eventually(() => new URL(page.url()).search).toBe("");
    await entry(page, "gap").fill("1.5");
    await entry(page, "mass").fill("900");
    await handle(page, "gap").getByRole("button", { name: /^back/ }).click();
    await eventually(() => textOf(handle(page, "gap"))).not.toMatch(/was/);
    await eventually(() => textOf(handle(page, "mass"))).toMatch(/was/);
    await page.getByRole("button", { name: "Reset all" }).click();
    await eventually(() => answer(page)).toBe(before);
    await eventually(() => new URL(page.url()).search).toBe("");
    for (const [key, text] of [
      ["gap", "-3"],
      ["gap", "900"],
      ["mass", "heavy"],
      ["series", "1.5"],
      ["charge", "140"],
      ["wheelFriction", ""],
    ] as const) {
      await entry(page, key).fill(text);
      await eventually(() => textOf(handle(page, key).locator(".field-error"))).toMatch(/for example/);
      await eventually(() => entry(page, key).getAttribute("aria-invalid")).toBe("true");
    }
    await eventually(() => answer(page)).toBe(before);
  });

  it("clears refused text, with all reset, and says what an address asks that can't be", async () => {
    const page = await screens.open("/match?gap=7");
    await eventually(() => page.getByText("the address asks for").count()).toBe(1);
    await entry(page, "mass").fill("heavy");
    await eventually(() => textOf(handle(page, "mass").locator(".field-error"))).toMatch(/for example/);
    await page.getByRole("button", { name: "Reset all" }).click();
    await eventually(() => page.locator(".handle .field-error").count()).toBe(0);
    await eventually(() => entry(page, "mass").inputValue()).toMatch(/^\d+$/);
    await eventually(() => page.getByText("the address asks for").count()).toBe(0);
  });

  it("reads a measured point by keys, saves the chart as SVG, PNG and CSV, and lays another build over it", async () => {
    const page = await screens.open("/match");
    await page.locator(".match-picture .chart-reader").focus();
    await page.keyboard.press("Home");
    await eventually(() => textOf(page.locator(".chart-tooltip"))).toMatch(/^Read: .*\srpm .*\sPa/);
    await page.keyboard.press("Escape");
    await eventually(() => page.locator(".chart-tooltip").count()).toBe(0);
    const saved = async (format: string): Promise<Buffer> => {
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.locator(".save-chart").first().getByRole("button", { name: format, exact: true }).click(),
      ]);
      expect(download.suggestedFilename()).toBe(`match-pane-crawler-second-rotor.${format.toLowerCase()}`);
      return readFileSync(await download.path());
    };
    const svg = (await saved("SVG")).toString();
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(svg).toMatch(/class="chart-line tone-rotor[^"]*"[^>]*stroke="rgb\(10, 106, 106\)"/);
    const png = await saved("PNG");
    expect([...png.subarray(1, 4)].map((code) => String.fromCharCode(code)).join("")).toBe("PNG");
    const csv = (await saved("CSV")).toString().split("\r\n");
    expect(csv[0]).toBe("what,flow [L/s],suction [Pa],pull [g],note");
    expect(csv[1]).toMatch(/^operating point,[\d.]+,[\d.]+,[\d.]+,/);
    await page.getByText("Lay other builds over it").click();
    const box = page.locator(".overlay-picker input:enabled").first();
    await box.check();
    await eventually(() =>
      page.locator(".match-picture .chart-line.own").first().getAttribute("stroke-dasharray"),
    ).toMatch(/\d/);
    await eventually(() => page.locator(".overlay-table tbody tr").count()).toBe(1);
    await eventually(() => page.url()).toContain("over=");
  });

  it("reaches every setting by the tab key alone, and answers in words with each at its lowest and at its highest", async () => {
    const page = await screens.open("/match");
    await eventually(() => page.locator("[data-handle]").count()).toBe(9);
    await page.locator(".handles-air summary").click();
    await page.locator("h1").click();
    const reached = new Set<string>();
    // Far more stops than there are: one round through the page.
    for (let i = 0; i < 200 && reached.size < 18; i++) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => {
        const active = document.activeElement;
        const key = active?.closest("[data-handle]")?.getAttribute("data-handle");
        return key ? `${key} ${active?.getAttribute("type")}` : null;
      });
      if (at) reached.add(at);
    }
    expect(reached.size).toBe(18);
    const keys = await page
      .locator("[data-handle]")
      .evaluateAll((all) => all.map((each) => each.getAttribute("data-handle") ?? ""));
    for (const end of ["Home", "End"]) {
      for (const key of keys) {
        await slider(page, key).focus();
        await page.keyboard.press(end);
        expect(await answer(page)).toMatch(STATES);
      }
    }
  });

  it("never scrolls sideways and shows what it means first, on a phone, with a handle in reach", async () => {
    const page = await screens.open("/match", { viewport: PHONE, hasTouch: true });
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBe(PHONE.width);
    const top = async (selector: string) => (await page.locator(selector).boundingBox())?.y ?? Number.NaN;
    await eventually(
      async () => (await top(".match-picture")) - (await top(".attitude-strip")),
    ).toBeGreaterThan(0);
    const panel = page.locator(".match-handles");
    await eventually(() => panel.evaluate((each) => each.getBoundingClientRect().bottom)).toBeLessThanOrEqual(
      PHONE.height + 1,
    );
  });

  it("says so, for a build that the book does not have, and offers another", async () => {
    const page = await screens.open("/match/no-such-build");
    await eventually(() => answer(page)).toBe("The bench book has no such build.");
    await page.getByRole("link", { name: "Show another build" }).click();
    await page.locator("svg[role=img]").first().waitFor();
  });
});

interface Answered {
  readonly suction: number;
  readonly worst: { readonly parked: { readonly margin: number } };
}

/** The stored build, asked of the server: its own numbers, inline. */
async function predictedByServer(id: string): Promise<Answered> {
  const response = await fetch(`${server.address}/api/v1/predict`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(await inputOfBuild(server.address, id)),
  });
  expect(response.status).toBe(200);
  return (await response.json()) as Answered;
}
