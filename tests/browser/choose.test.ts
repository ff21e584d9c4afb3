import { readFile } from "node:fs/promises";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { inputOfBuild } from "./support/inline.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();
const REFUSED = /Failed to load resource|ERR_CONNECTION_REFUSED|ERR_INCOMPLETE_CHUNKED/;

const server = useOwnServer();

const at = (path: string) => server.address + path;
const textOf = async (locator: Locator) => ((await locator.textContent()) ?? "").replace(/\u202f/g, " ");
const answer = (page: Page) => textOf(page.locator("main h1"));
/** "135 of 3168 combinations work", whatever follows. */
const counted = async (page: Page) => /^.* of .* combinations? works?/.exec(await answer(page))?.[0];
const jobOf = (page: Page) => new URL(page.url()).pathname.split("/")[2];
const solve = (page: Page) => page.getByRole("button", { name: "Solve them" }).click();
const rows = (page: Page) => page.locator(".choose-row");
const panel = (page: Page) => page.getByRole("region", { name: "The combination looked at" });

async function ask<T>(path: string): Promise<T> {
  return (await (await fetch(at(`/api/v1${path}`))).json()) as T;
}

interface Job {
  readonly state: string;
  readonly sets: number;
  readonly admissible: number;
}
interface Told {
  readonly index: number;
  readonly values: Record<string, number | null>;
}

/** Types a range of Swept nine's diameters and of the lip's gaps. */
async function type(page: Page, sizes: readonly string[], gaps: readonly string[]): Promise<void> {
  const fields = ["from", "to", "step"];
  const name = (what: string, end: string, part: string) =>
    page.getByLabel(
      end === "step"
        ? `Step of the ${what}, mm, ${part}`
        : `${what === "gap" ? "Gap" : "Diameter"} ${end}, mm, ${part}`,
    );
  for (const [i, end] of fields.entries()) {
    await name("diameter", end, "Swept nine").fill(sizes[i]);
    await name("gap", end, "Square lip").fill(gaps[i]);
  }
}

async function solved(): Promise<Page> {
  const page = await screens.open(at("/choose"), { allowed: REFUSED });
  await type(page, ["36", "50", "1"], ["0.3", "0.9", "0.05"]);
  await solve(page);
  await rows(page).first().waitFor();
  return page;
}

describe("Choose, on the demo", () => {
  it("counts while it is typed, solves, and answers with the number that the server has", async () => {
    const page = await screens.open(at("/choose"));
    await eventually(() => answer(page)).toBe("Which motor, rotor, pack and skirt work?");
    await type(page, ["36", "50", "1"], ["0.3", "0.9", "0.05"]);
    await eventually(() => textOf(page.locator(".choose-solve p.small"))).toMatch(
      /4 motors × 3 packs × \(20 rotor sizes × 13 skirts and gaps \+ 2 propeller sizes × 2 skirts or none\) = 3168 combinations/,
    );
    await solve(page);
    await rows(page).first().waitFor();
    const job = await ask<Job>(`/choose/${jobOf(page)}`);
    expect(job).toMatchObject({ state: "done", sets: 3168 });
    await eventually(() => answer(page)).toMatch(
      new RegExp(`^${job.admissible} of 3168 combinations work; the lightest weighs`),
    );
    // What is tried in the browser while one types says the same as the server.
    await eventually(() => textOf(page.locator(".choose-solve p.small"))).toMatch(
      new RegExp(`${job.admissible} of them work`),
    );
    await eventually(() => answer(page)).toMatch(
      /the (surest|best of the shortlist) has at least .* in 95 of 100 cases/,
    );
    await eventually(() => textOf(page.locator(".choose-shortlist"))).toMatch(
      / tie: they differ by less than|No two of them tie/,
    );
  });

  it("comes back with form, combinations, pins and axes, when the page is loaded anew", async () => {
    const page = await solved();
    const before = await counted(page);
    await rows(page).nth(1).getByRole("button", { name: "pin" }).click();
    await page.getByLabel("along").selectOption({ label: "Minutes" });
    await page.reload();
    await rows(page).first().waitFor();
    await eventually(() => counted(page)).toBe(before);
    await eventually(() => page.getByLabel("Diameter to, mm, Swept nine").inputValue()).toBe("50");
    await eventually(() => page.getByLabel("Step of the gap, mm, Square lip").inputValue()).toBe("0.05");
    await eventually(() => page.getByLabel("along").inputValue()).toBe("time");
    await page.locator(".choose-pinned li").waitFor();
    await page.getByRole("link", { name: "Match" }).click();
    await page.getByRole("link", { name: "Choose" }).click();
    await rows(page).first().waitFor();
    await eventually(() => counted(page)).toBe(before);
  });

  it("sorts, filters and scrolls to the last of all combinations, drawing few rows", async () => {
    const page = await solved();
    await page.getByLabel("Combinations shown").selectOption("all");
    await page.getByRole("button", { name: "Mass, g" }).click();
    await eventually(() => page.locator(".choose-table").getAttribute("aria-rowcount")).toBe("3169");
    const { items } = await ask<{ items: Told[] }>(
      `/choose/${jobOf(page)}/sets?sort=mass&order=most&only=all&limit=1`,
    );
    // Scrolled at every look: rows that come sorted anew begin at the first.
    const last = async () => {
      await page.locator(".choose-scroll").evaluate((element) => element.scrollTo(0, element.scrollHeight));
      return page.locator("[aria-rowindex='3169'] td").nth(1).allTextContents();
    };
    await eventually(last).toEqual([String(Math.round((items[0].values.mass ?? 0) * 1000))]);
    await eventually(() => rows(page).count()).toBeLessThan(30);
    // What the arrow keys come to is read aloud, row by row.
    await page.locator(".choose-scroll").press("ArrowDown");
    await page.locator(".choose-scroll").press("ArrowDown");
    await eventually(() => textOf(page.locator(".choose-table-part [role=status]"))).toMatch(
      /^2 of 3\s?168: .*; (works|out); Margin.*Mass, g: \d+/,
    );
  });

  it("opens each figure of the row that is looked at to its working, and the arrow keys go on from there", async () => {
    const page = await solved();
    await rows(page).nth(1).locator("td").nth(1).click();
    const margin = rows(page).nth(1).locator("td button.worked").first();
    await eventually(() => textOf(margin)).toMatch(/^\d+\.\d\d ×/);
    const [shown = ""] = /^[\d.]+/.exec(await textOf(margin)) ?? [];
    await margin.click();
    const dialog = page.getByRole("dialog");
    await eventually(async () => (await textOf(dialog.locator("h2"))).toLowerCase()).toContain("margin");
    const result = /margin = (\d+\.\d+)/.exec(await textOf(dialog.locator("p").first()))?.[1];
    expect(Number(result).toFixed(2)).toBe(shown);
    await page.keyboard.press("Escape");
    // Row 3 takes the place of the one whose figure had the focus: the table keeps it.
    await margin.focus();
    await page.keyboard.press("ArrowDown");
    await eventually(() => page.evaluate(() => document.activeElement?.className)).toBe("choose-scroll");
    await page.close();
  });

  it("says of each combination whether a ducted rotor or an open propeller presses it on, beside its parts, and shows one kind alone", async () => {
    const page = await solved();
    await page.getByLabel("Combinations shown").selectOption("all");
    const kinds = async () => [...new Set(await page.locator(".choose-kind").allTextContents())];
    for (const [kind, said] of [
      ["open", "open propeller"],
      ["ducted", "ducted rotor"],
    ]) {
      await page.getByLabel("Ducted rotors or open propellers").selectOption(kind);
      await eventually(kinds).toEqual([said]);
    }
    // Seen without scrolling sideways, on a phone as well.
    await page.setViewportSize(PHONE);
    const end = () =>
      page
        .locator(".choose-kind")
        .first()
        .evaluate((element) => element.getBoundingClientRect().right);
    await eventually(end).toBeLessThan(PHONE.width / 2);
  });

  it("says why a combination is out, by the keyboard in the plot, and pins it", async () => {
    const page = await solved();
    await page.getByLabel("Combinations shown").selectOption("all");
    const reader = page.getByRole("slider", { name: /^Combinations/ });
    await reader.focus();
    await page.keyboard.press("Home");
    await eventually(() => textOf(page.locator(".chart-tooltip"))).toMatch(
      /out: the worst attitude while driving has \d\.\d\d ×, 1\.50 × wanted/,
    );
    await page.keyboard.press("Enter");
    await eventually(() => textOf(panel(page))).toMatch(/Why not\?Out: the worst attitude while driving/);
    await page.keyboard.press("p");
    await page.locator(".choose-pinned li").first().waitFor();
    await eventually(() => page.locator(".choose-picture .layer-names text").allTextContents()).toEqual([
      "A",
    ]);
    await reader.focus();
    const before = await reader.getAttribute("aria-valuenow");
    await page.keyboard.press("ArrowRight");
    await eventually(() => reader.getAttribute("aria-valuenow")).not.toBe(before);
  });

  it("opens a combination as a build that predicts what it was chosen for", async () => {
    const page = await solved();
    const { items } = await ask<{ items: Told[] }>(`/choose/${jobOf(page)}/sets?limit=1`);
    await rows(page).first().getByRole("button", { name: "open" }).click();
    await page.waitForURL(/\/match\/.*chosen/);
    const id = new URL(page.url()).pathname.split("/")[2];
    const input = await inputOfBuild(server.address, id);
    const response = await fetch(at("/api/v1/predict"), {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(input),
    });
    const { worst } = (await response.json()) as { worst: { driving: { margin: number } } };
    expect(worst.driving.margin).toBeCloseToRelative(items[0].values.driving ?? 0, 1e-9);
  });

  it("lays pinned combinations side by side in Attitudes and in Match, each stored as a build once", async () => {
    const page = await solved();
    for (const row of [0, 4, 9]) await rows(page).nth(row).getByRole("button", { name: "pin" }).click();
    await page.locator(".choose-pinned li").nth(2).waitFor();
    const builds = async () => (await ask<{ items: unknown[] }>("/builds?limit=100")).items.length;
    const before = await builds();
    await page.getByRole("button", { name: "In Attitudes" }).click();
    await page.getByRole("region", { name: "Builds side by side" }).waitFor();
    await eventually(() => page.locator("section[aria-label='Builds side by side'] thead th").count()).toBe(
      4,
    );
    await page.goBack();
    await page.locator(".choose-pinned li").nth(2).waitFor();
    await page.getByRole("button", { name: "Side by side in Match" }).click();
    await page.locator(".overlay-table tbody tr").nth(1).waitFor();
    await eventually(builds).toBe(before + 3);
  });

  it("saves the combinations shown as CSV, a line each", async () => {
    const page = await solved();
    const { admissible } = await ask<Job>(`/choose/${jobOf(page)}`);
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "save these as CSV" }).click(),
    ]);
    const lines = (await readFile(await saved.path(), "utf8")).trim().split("\r\n");
    expect(lines).toHaveLength(admissible + 1);
    expect(lines[0]).toMatch(/^motor,rotor,kind,/);
  });
});

describe("Choose, a long question", () => {
  it("tells how far it is, and cancelled leaves nothing: the form stands, the job is gone", async () => {
    const page = await screens.open(at("/choose"), { allowed: REFUSED });
    await type(page, ["36", "50", "0.25"], ["0.1", "2.1", "0.001"]);
    await solve(page);
    const progress = page.locator(".choose-progress");
    await eventually(() => textOf(progress)).toMatch(
      /\d of 1 488 792 combinations solved, \d+ of them work so far, .* combinations a second/,
    );
    const job = jobOf(page);
    await progress.getByRole("button", { name: "Cancel" }).click();
    await progress.waitFor({ state: "detached" });
    await eventually(async () => (await fetch(at(`/api/v1/choose/${job}`))).status).toBe(404);
    await eventually(() => new URL(page.url()).pathname).toBe("/choose");
    await eventually(() => page.getByLabel("Step of the gap, mm, Square lip").inputValue()).toBe("0.001");
  });

  it("cancelled while the combinations before it are shown, leaves those, their pins, and what was typed", async () => {
    const page = await solved();
    const before = await counted(page);
    await rows(page).nth(1).getByRole("button", { name: "pin" }).click();
    await page.locator(".choose-pinned li").waitFor();
    await type(page, ["36", "50", "0.25"], ["0.1", "2.1", "0.001"]);
    await solve(page);
    await page.locator(".choose-progress").getByRole("button", { name: "Cancel" }).click();
    await page.locator(".choose-progress").waitFor({ state: "detached" });
    await eventually(() => counted(page)).toBe(before);
    await eventually(() => page.locator(".choose-pinned li").count()).toBe(1);
    await eventually(() => page.getByLabel("Step of the gap, mm, Square lip").inputValue()).toBe("0.001");
  });

  it("of too many combinations is refused with the count and how to narrow it", async () => {
    const page = await screens.open(at("/choose"), { allowed: REFUSED });
    await type(page, ["36", "50", "0.01"], ["0.1", "2.1", "0.001"]);
    await eventually(() => textOf(page.locator(".choose-solve p.small"))).toMatch(
      /At most 5 000 000 combinations are solved at once: narrow the skirts and gaps first/,
    );
    await solve(page);
    await eventually(() => textOf(page.locator(".choose-form"))).toMatch(/Narrow skirts and gaps first/);
    await eventually(() => new URL(page.url()).pathname).toBe("/choose");
  });
});

describe("Choose, with what can't be", () => {
  it("limits that nothing meets: says so, which to relax by how much, and one click does it", async () => {
    const page = await screens.open(at("/choose"), { allowed: REFUSED });
    await page.getByLabel("Margin at least, ×").fill("6");
    await solve(page);
    await eventually(() => answer(page)).toMatch(/^None of the 132 combinations works\.$/);
    const relax = page.getByRole("button", { name: /^Relax the margin to/ }).first();
    const wanted = /to ([\d.]+)/.exec(await textOf(relax))?.[1] ?? "";
    await relax.click();
    await eventually(() => answer(page)).toMatch(/^[1-9]\d* of 132 combinations? works?/);
    await eventually(() => page.getByLabel("Margin at least, ×").inputValue()).toBe(wanted);
  });

  it("nonsense in every field stands beside its field, nothing is asked, and the first wrong field has the focus", async () => {
    const page = await screens.open(at("/choose"));
    await type(page, ["50", "36", "0"], ["wide", "", "1e999"]);
    for (const label of [
      "Minutes at least",
      "Chance of holding at least, %",
      "Winding at most, °C",
      "Total height at most, mm",
      "Price at most",
    ])
      await page.getByLabel(label).fill("<b>−7 parsecs</b>");
    await page.getByLabel("Throttle, %").fill("999");
    await page.getByLabel("Margin at least, ×").fill("");
    await page.getByLabel("Burst speed over speed at least, ×").fill("0");
    await page.getByLabel("Worst, driving").uncheck();
    await page.getByLabel("Bell motor, 18 mm").uncheck();
    await solve(page);
    await eventually(() => page.locator(".choose-form .field-error").count()).toBeGreaterThanOrEqual(11);
    const first = page.locator("[aria-invalid=true]").first();
    await eventually(() => first.evaluate((input) => input === document.activeElement)).toBe(true);
    await eventually(() => new URL(page.url()).pathname).toBe("/choose");
  });

  it("a job that the server has forgotten is said to be gone, and is solved again with the same form", async () => {
    const page = await solved();
    const before = await counted(page);
    await server.restart();
    await page.reload();
    await page.getByRole("button", { name: "Solve it again" }).click();
    await rows(page).first().waitFor();
    await eventually(() => counted(page)).toBe(before);
  });

  it("a server that ends while it solves leaves the question in the form, and solves it once it is back", async () => {
    const page = await screens.open(at("/choose"), { allowed: REFUSED });
    await type(page, ["36", "50", "0.25"], ["0.1", "2.1", "0.001"]);
    await solve(page);
    await page.locator(".choose-progress").waitFor();
    await server.restart();
    const again = page.getByRole("button", { name: "Solve it again" });
    await again.waitFor();
    await eventually(() => page.getByLabel("Step of the gap, mm, Square lip").inputValue()).toBe("0.001");
    await again.click();
    await page.locator(".choose-progress").getByRole("button", { name: "Cancel" }).click();
    await page.locator(".choose-progress").waitFor({ state: "detached" });
  });

  it("a motor that isn't weighed can't be ticked, and a link leads to its form", async () => {
    const light = { name: "Unweighed", kv: 4000, resistance: 1, noLoadCurrent: 0.1 };
    await fetch(at("/api/v1/motors"), {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(light),
    });
    const page = await screens.open(at("/choose"));
    await eventually(() => page.getByLabel("Unweighed").isDisabled()).toBe(true);
    await page.getByRole("link", { name: "weigh it (Unweighed)" }).click();
    await page.getByLabel(/^Mass/).first().waitFor();
  });
});

describe("Choose, on a phone", () => {
  it("fits 390 px, and what it means comes before the picture", async () => {
    const page = await screens.open(at("/choose"), { viewport: PHONE });
    await solve(page);
    await rows(page).first().waitFor();
    await eventually(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      PHONE.width,
    );
    const below = async () => {
      const [meaning, picture] = await Promise.all(
        [panel(page), page.locator(".chart").first()].map((each) => each.boundingBox()),
      );
      return (picture?.y ?? 0) - (meaning?.y ?? Number.NaN);
    };
    await eventually(below).toBeGreaterThan(0);
  });
});
