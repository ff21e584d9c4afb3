import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

const server = useOwnServer();

const at = (path: string) => server.address + path;
const cell = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const asked = (page: Page) => page.getByRole("alertdialog");
const stored = async (collection: string) => {
  const response = await fetch(at(`/api/v1/${collection}?limit=500`));
  return ((await response.json()) as { items: { data: { name?: string } }[] }).items;
};

describe("a pull of 900 kg where 300 g were predicted, by keyboard on a phone", () => {
  it("is asked about before it is saved; Escape leads back to the field, the second button stores it as it is", async () => {
    const page = await screens.open(at("/bench/new/pull"), { viewport: PHONE });
    const before = (await stored("tests")).length;
    await page.getByText("All pulls", { exact: true }).click();
    await cell(page, "pull 1, held").fill("900 kg");
    await page.getByRole("button", { name: "Save the test" }).press("Enter");
    await asked(page).waitFor();
    expect(await asked(page).textContent()).toMatch(
      /Not saved yet\. Is this right\?.*Pull 1, held 900 kg: \d+\sg beside the rig was predicted\. Is the unit right\?/,
    );
    await eventually(() => asked(page).evaluate((box) => box === document.activeElement)).toBe(true);
    expect((await stored("tests")).length).toBe(before);

    await page.keyboard.press("Escape");
    await asked(page).waitFor({ state: "detached" });
    await eventually(() =>
      cell(page, "pull 1, held").evaluate((input) => input === document.activeElement),
    ).toBe(true);

    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Save the test" }).press("Enter");
    await eventually(() => asked(page).evaluate((box) => box === document.activeElement)).toBe(true);
    const asIs = asked(page).getByRole("button", { name: "It is right, save it" });
    await eventually(async () => {
      await page.keyboard.press("Tab");
      return asIs.evaluate((button) => button === document.activeElement);
    }).toBe(true);
    await page.keyboard.press("Enter");
    await page.locator(".bench-saved").waitFor();
    expect((await stored("tests")).length).toBe(before + 1);
  });

  it("corrected, is saved without another question", async () => {
    const page = await screens.open(at("/bench/new/pull"), { viewport: PHONE });
    await page.getByText("All pulls", { exact: true }).click();
    await cell(page, "pull 1, held").fill("900 kg");
    await page.getByRole("button", { name: "Save the test" }).click();
    await asked(page).getByRole("link", { name: "Pull 1, held" }).click();
    await cell(page, "pull 1, held").fill("310 g");
    expect(await asked(page).count()).toBe(0);
    await page.getByRole("button", { name: "Save the test" }).click();
    await page.locator(".bench-saved").waitFor();
  });
});

describe("a motor with a K_v of 420 000", () => {
  it("is asked about in its own form, and stored once it is said to be right", async () => {
    const page = await screens.open(at("/parts/motors/new"));
    await page.getByLabel("Name").fill("Very fast");
    await page.getByLabel(/^Speed constant/).fill("420 000");
    await page.getByLabel(/^Resistance/).fill("0.3");
    await page.getByLabel(/^No-load current/).fill("0.2");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await asked(page).waitFor();
    await eventually(() => asked(page).textContent()).toMatch(
      /Speed constant K_v 420 000 rpm\/V: usually 100\srpm\/V to 60\s000\srpm\/V/,
    );
    expect((await stored("motors")).map(({ data }) => data.name)).not.toContain("Very fast");
    await asked(page).getByRole("button", { name: "It is right, save it" }).click();
    await page.waitForURL(/saved=motors/);
    expect((await stored("motors")).map(({ data }) => data.name)).toContain("Very fast");
  });
});

describe("a file whose column is in another unit than its header says", () => {
  it("is asked about once before any test of it is stored", async () => {
    const before = (await stored("tests")).length;
    const [motor] = await stored("motors");
    const page = await screens.open(at("/bench/import?kind=motor"));
    const text = "voltage (V),I [A],rpm,no load\n3.7,310,27600,yes\n3.8,220,25000,\n";
    await page
      .getByLabel("A file")
      .setInputFiles({ name: "a.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
    await page.getByLabel("Motor", { exact: true }).selectOption({ label: motor.data.name ?? "" });
    await page.getByRole("button", { name: "Save 2 runs as 1 motor test" }).click();
    await asked(page).waitFor();
    await eventually(() => asked(page).textContent()).toMatch(
      /Line 2, current 310 A: .*Line 3, current 220 A: /,
    );
    await asked(page).getByRole("button", { name: "Back to the form" }).click();
    await asked(page).waitFor({ state: "detached" });
    expect((await stored("tests")).length).toBe(before);
  });
});
