import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

interface Archived {
  readonly id: string;
  readonly data: {
    readonly kind?: string;
    readonly title?: string;
    readonly skirt?: string;
    readonly surface?: string;
    readonly rows: Record<string, unknown>[];
  };
}
interface Archive {
  readonly records: { readonly tests: Archived[]; readonly builds: Archived[] };
}

const server = useOwnServer();
let build: Archived;
let wrong: Archived;

/** A book of before contradictions were refused: in its first pull on the build's own parts it let go below what it held. */
beforeAll(async () => {
  const address = `${server.address}/api/v1/archive`;
  const archive = (await (await fetch(address)).json()) as Archive;
  [build] = archive.records.builds;
  const own = archive.records.tests.find(
    ({ data }) =>
      data.kind === "pull" && data.skirt === build.data.skirt && data.surface === build.data.surface,
  );
  if (!own) throw new Error("The demo has no pull test of its first build.");
  wrong = own;
  Object.assign(wrong.data.rows[0], {
    held: { value: 1400, unit: "g" },
    letGo: { value: 1300, unit: "g" },
  });
  const answer = await fetch(`${address}?replace=true`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(archive),
  });
  expect(answer.status, await answer.text()).toBeLessThan(300);
});

const at = (path: string) => server.address + path;
const leftOut = (page: Page) => page.locator(".left-out");

describe("a stored pull that let go below what it held", () => {
  it.each(["match", "attitudes", "run-down"])("is named by %s, with a link to its test", async (view) => {
    const page = await screens.open(at(`/${view}/${build.id}`));
    await leftOut(page).waitFor();
    await eventually(() => leftOut(page).textContent()).toMatch(
      /, row 1: let go at 1300\sg, below the 1400\sg it held\./,
    );
    expect(await leftOut(page).getByRole("link").getAttribute("href")).toBe(`/bench/${wrong.id}`);
  });

  it("is named by Choose, as long as its skirt is tried", async () => {
    const page = await screens.open(at("/choose"));
    await leftOut(page).waitFor();
    await eventually(() => leftOut(page).textContent()).toMatch(/row 1: let go at 1300\sg/);
  });

  it("is marked in its form, and saved once it is set aside with a reason", async () => {
    const page = await screens.open(at(`/bench/${wrong.id}`), { viewport: PHONE });
    await page.getByRole("button", { name: "Save the correction" }).click();
    const row = page.locator(".bench-wrong");
    await eventually(() => row.count()).toBe(1);
    await eventually(() => row.locator(".bench-so-far").textContent()).toMatch(
      /^Row 1: let go at 1300\sg, below the 1400\sg it held\. Correct one of them, or set the row aside\.$/,
    );
    await eventually(() => page.locator(".bench-summary").textContent()).toMatch(/Pull 1: let go at 1300\sg/);
    await page.screenshot({ path: "/tmp/wrong-phone.png", fullPage: true });
    await row.getByRole("button", { name: "Set aside pull 1" }).click();
    await page.getByLabel("Why pull 1 is set aside").fill("misread");
    await page.getByRole("button", { name: "Save the correction" }).click();
    await page.locator(".bench-saved").waitFor();
    await page.goto(at(`/match/${build.id}`));
    await page.getByRole("heading", { name: "Based on" }).waitFor();
    await eventually(() => leftOut(page).count()).toBe(0);
  });

  it("typed anew: the row is marked once both loads were left, before anything is saved", async () => {
    const page = await screens.open(at("/bench/new/pull"));
    await page.getByLabel("pull 1, held", { exact: true }).fill("310");
    await page.getByLabel("pull 1, let go", { exact: true }).fill("300");
    await page.getByLabel("Title").focus();
    await eventually(() => page.locator(".bench-wrong .bench-so-far").textContent()).toMatch(
      /^Row 1: let go at 300\sg, below the 310\sg it held\./,
    );
    await page.screenshot({ path: "/tmp/wrong-new.png" });
    await page.getByLabel("pull 1, let go", { exact: true }).fill("330");
    await eventually(() => page.locator(".bench-wrong").count()).toBe(0);
  });
});
