import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();
const at = (path: string) => server.address + path;

const textOf = async (page: Page) => (await page.locator("main").innerText()).replace(/[\u202f\u00a0]/g, " ");

/** Units of length, mass, flow and suction that may not be left once a book is shown in inches; names of parts may have them. */
const METRIC = /\d (?:g|Pa|kPa|L\/s|°C|cm²|hPa)(?![\w/])/;

describe("a book whose units are chosen", () => {
  it("in inches: every page of a build follows at once, elsewhere as well, and no metric figure is left", async () => {
    const match = await screens.open(at("/match/pane-crawler"));
    await match.locator(".handle-unit").first().waitFor();
    await eventually(() => textOf(match)).toMatch(/suction, Pa|g of pull/);

    const units = await screens.open(at("/bench/units"));
    await units.getByRole("radio", { name: /^Inch/ }).check();
    await eventually(() => units.locator("main h1").textContent()).toMatch(/inches/);

    // the other page was told, and drew itself anew
    await eventually(() => match.locator('[data-handle="diameter"] .handle-unit').textContent()).toBe("in");
    expect(await match.locator('[data-handle="diameter"] input[type="text"]').inputValue()).toBe("1.732");
    for (const path of ["attitudes", "mass", "fit-up", "run-down"]) {
      const page = await screens.open(at(`/${path}/pane-crawler`));
      await eventually(() => textOf(page)).toMatch(/\d (?:oz|in|inH2O|cfm|°F)\b/);
      expect(METRIC.exec(await textOf(page))?.[0], path).toBeUndefined();
    }
  });

  it("a bare number is meant in the unit beside the field, any other unit is read as well", async () => {
    const page = await screens.open(at("/match/pane-crawler"));
    const gap = page.locator('[data-handle="gap"]');
    const entry = gap.locator('input[type="text"]');
    await entry.fill("0.03");
    await eventually(() => page.url()).toContain(`gap=${0.03 * 0.0254}`);
    await entry.fill("0.5 mm");
    await eventually(() => page.url()).toContain("gap=0.0005");
  });

  it("one quantity otherwise: it alone changes, and a phone shows it after a reload", async () => {
    const page = await screens.open(at("/bench/units"), { viewport: PHONE });
    await page.getByLabel("Sizes and gaps").selectOption("cm");
    await eventually(() => page.locator("main h1").textContent()).toMatch(/your own choice/);
    await page.goto(at("/match/pane-crawler"));
    await eventually(() => page.locator('[data-handle="gap"] .handle-unit').textContent()).toBe("cm");
    expect(await page.locator('[data-handle="mass"] .handle-unit').textContent()).toBe("oz");
  });
});
