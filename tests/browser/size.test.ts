import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();

const textOf = async (locator: Locator) => ((await locator.textContent()) ?? "").replace(/\s/g, " ");

describe("Size", () => {
  it("of the demo's build: the best size in a sentence, picture, families and motors; a stronger motor is worked out anew", async () => {
    const page = await screens.open("/size");
    const answer = () => textOf(page.locator("main h1"));
    await eventually(answer).toMatch(
      / at [\d.]+ mm takes least: [\d.]+ W from the pack, wound for [\d ]+ rpm\/V\.$/,
    );
    const first = await answer();
    expect(await page.locator(".chart g.panel").count()).toBe(3);
    expect(await page.locator(".size-best tbody tr").count()).toBe(4);
    expect(await page.locator(".size-motors tbody tr").count()).toBe(4);
    await page.getByLabel("Motor as strong as").selectOption("bell-22");
    await eventually(answer).not.toBe(first);
    await page.getByLabel("Largest size, mm", { exact: true }).fill("20");
    await eventually(() => textOf(page.locator(".page-head [role=alert]"))).toMatch(
      /must lie above the smallest/,
    );
  });

  it("with the nearest motor: a build is made of it and stands in Match; the sizes next to it are tried in Choose", async () => {
    const page = await screens.open("/size");
    await page.getByRole("button", { name: "Try the sizes next to it in Choose" }).click();
    await eventually(() => new URL(page.url()).pathname).toMatch(/^\/choose\/.+/);
    await page.goBack();
    await page
      .getByRole("button", { name: /^Make a build of it/ })
      .first()
      .click();
    await eventually(() => new URL(page.url()).pathname).toMatch(/^\/match\/.+/);
    await eventually(() => textOf(page.locator("header select option:checked").first())).toMatch(
      /, sized [\d.]+ mm/,
    );
  });

  it("of a need that is typed: its own mass and parts, a rotor from its drawing; stored as a build with the parts that were typed", async () => {
    const page = await screens.open("/size");
    const answer = () => textOf(page.locator("main h1"));
    await eventually(answer).toMatch(/takes least/);
    await page.getByLabel("one that is typed here").check();
    await page.getByLabel("Mass, everything on board, g").fill("180");
    await page.getByLabel(/^Skirt/).selectOption({ label: "typed here" });
    await page.getByLabel("Length of the lip, mm").fill("365");
    await page.getByText("Rotors from a drawing").click();
    await page.getByRole("button", { name: "Add a rotor from its drawing" }).click();
    await eventually(async () => page.locator(".size-best tbody tr").count()).toBe(5);
    expect(await page.locator(".size-best tbody tr", { hasText: "Drawn: 7 blades" }).textContent()).toContain(
      "estimated",
    );
    expect(new URL(page.url()).search).toContain("need-perimeter=0.365");
    await page
      .getByRole("button", { name: /^Make a build of it/ })
      .first()
      .click();
    await eventually(() => new URL(page.url()).pathname).toMatch(/^\/match\/.+/);
    await eventually(() => textOf(page.locator("header select option:checked").first())).toMatch(
      /^A need of 180 g, sized [\d.]+ mm/,
    );
  });
});
