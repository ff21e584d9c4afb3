import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { settled, sideways } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

const plain = (text: string | null) => (text ?? "").replace(/\s+/g, " ").trim();

/** @returns the table's rows: what each says of each build, its title first */
async function tableOf(page: Page): Promise<Map<string, string[]>> {
  await page.locator(".compare[aria-busy=false]").waitFor();
  const rows = await page.locator(".compare-table tbody tr:has(td)").evaluateAll((all) =>
    all.map((row) =>
      [...row.children].map((cell) => {
        const copy = cell.cloneNode(true) as HTMLElement;
        for (const hidden of copy.querySelectorAll(".visually-hidden, .compare-sign")) hidden.remove();
        for (const small of copy.querySelectorAll("small")) small.prepend(" | ");
        return copy.textContent ?? "";
      }),
    ),
  );
  return new Map(rows.map(([title, ...cells]) => [plain(title), cells.map(plain)]));
}

/** @returns the texts of a list on a page, what is only read aloud left out */
const textsOf = (page: Page, selector: string): Promise<string[]> =>
  page.locator(selector).evaluateAll((all) =>
    all.map((element) => {
      const copy = element.cloneNode(true) as HTMLElement;
      for (const hidden of copy.querySelectorAll(".visually-hidden")) hidden.remove();
      return (copy.textContent ?? "").replace(/\s+/g, " ").trim();
    }),
  );

const BUILDS = ["roof-crawler", "pane-crawler", "prop-scout"];
const THROUGH = /(\d[\d.]* ×|no pull needed|just under 1 ×)/;

describe("Compare", () => {
  it("gives the figures of Match and of the sheet to the digit, of ducted rotors and of a propeller", async () => {
    const page = await screens.open(`/compare?builds=${BUILDS.join(",")}`);
    const table = await tableOf(page);
    const cell = (title: string, at: number) => table.get(title)?.[at] ?? `no row ${title}`;
    for (const [at, id] of BUILDS.entries()) {
      await page.goto(`/sheet/${id}`);
      await page.locator(".sheet-view[aria-busy=false]").waitFor();
      const state = plain(await page.locator("main h1").first().textContent());
      expect(cell("Verdict", at), id).toContain(state);
      for (const text of await textsOf(page, ".sheet .attitude-strip > li")) {
        const [name, parked, driving] = [
          /^(.*?\d+°)/.exec(text)?.[1] ?? "",
          THROUGH.exec(text)?.[0] ?? "",
          /driving (\S+ ×)/.exec(text)?.[1] ?? "",
        ];
        const title = table.has(`${name}, parked`) ? name : "Worst angle";
        expect(cell(`${title}, parked`, at), `${id}: ${text}`).toContain(`${parked} |`);
        expect(cell(`${title}, driving`, at), `${id}: ${text}`).toContain(`${driving} |`);
        const range = /chance, ([\d.]+ to [\d.]+ ×)/.exec(text)?.[1];
        if (range) expect(cell(`${title}, parked`, at), `${id}: ${text}`).toContain(range);
      }
      const mass = plain(await page.locator(".sheet [aria-label=Mass]").textContent());
      expect(mass, id).toContain(cell("Mass", at).split(" | ").slice(0, 2).join(" "));
      const left = /(\d[\d.]* g) left for|Too heavy by (\d[\d.]* g)/.exec(mass);
      expect(cell("Headroom where it is tightest", at), id).toContain(left?.[1] ?? left?.[2] ?? "?");
      for (const row of await textsOf(page, ".sheet .limit-table tbody tr")) {
        // "Motor current", not "Motor": the longest that it begins with.
        const titles = [...table.keys()].filter((each) => row.startsWith(each));
        const [title] = titles.sort((a, b) => b.length - a.length);
        if (!title || !/current|voltage|speed|settled|load/.test(title)) continue;
        const [value, ...also] = cell(title, at).split(" | ");
        for (const words of [value.replace(/ ?estimated$/, ""), ...also])
          expect(row, `${id}: ${title}`).toContain(words);
      }
      await page.goto(`/match/${id}`);
      await settled(page);
      const pull = cell("Pull, or thrust of a propeller", at).split(" | ")[0].replace(/ g$/, "");
      const said = plain(await page.locator("svg[role=img]").first().getAttribute("aria-label"));
      expect(said, id).toContain(`${pull} g`);
    }
  });

  it("is reached from the builds' list; one more is added, one removed, only what differs shown and all of it saved", async () => {
    const page = await screens.open("/parts");
    await page.getByRole("link", { name: "Compare builds" }).click();
    const heads = page.locator(".compare-table thead th");
    await eventually(() => heads.count()).toBe(6);
    await page.getByRole("button", { name: "remove B" }).click();
    await eventually(() => heads.count()).toBe(5);
    await page.getByLabel("Add a build").selectOption({ index: 1 });
    await eventually(() => heads.count()).toBe(6);
    await page.locator(".compare[aria-busy=false]").waitFor();
    const rows = page.locator(".compare-table tbody tr:has(td)");
    const all = await rows.count();
    await page.getByLabel("Only what differs").check();
    await eventually(() => rows.count()).toBeLessThan(all);
    expect(await rows.count()).toBe(await page.locator(".compare-table .compare-differs").count());
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "CSV" }).click(),
    ]);
    const text = readFileSync(await file.path(), "utf8");
    expect(text.split("\r\n").length).toBeGreaterThan(all);
    await page
      .getByRole("button", { name: /show the working of margin at 90°, parked/ })
      .first()
      .click();
    await page.getByRole("dialog").waitFor();
  });

  it("on a phone scrolls sideways in its own box, the figures' names staying in sight", async () => {
    const page = await screens.open(`/compare?builds=${BUILDS.join(",")}`, { viewport: PHONE });
    await page.locator(".compare[aria-busy=false]").waitFor();
    expect(await sideways(page)).toEqual([]);
    const name = page.getByRole("rowheader", { name: /Least margin/ });
    const before = await name.boundingBox();
    await page.locator(".compare .data-table-scroll").evaluate((box) => box.scrollBy(200, 0));
    await eventually(async () => (await name.boundingBox())?.x).toBe(before?.x);
    expect(
      await page.locator(".compare .data-table-scroll").evaluate((box) => box.scrollLeft),
    ).toBeGreaterThan(100);
  });
});
