import { createReadStream, existsSync, mkdtempSync, rmSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { extname, join, resolve } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFindings, sideways } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { LAPTOP, PHONE, useScreens, ZOOMED } from "./support/page.ts";

const screens = useScreens();
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
};
/** Of one component many states stand here, where a view has one: their landmarks share a name. */
const otherThanAgain = (finding: string) => !finding.startsWith("landmark-unique");
/** No text is smaller [px]: LOOK, type. */
const SMALLEST_TEXT = 13.5;

let [folder, address] = ["", ""];
let site: Server;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "gripcurve-components-"));
  await build({
    configFile: false,
    root: join(import.meta.dirname, "components"),
    logLevel: "error",
    oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
    build: { outDir: folder, emptyOutDir: true, target: "es2022", assetsInlineLimit: 0 },
  });
  site = createServer(({ url = "/" }, answer) => {
    const file = resolve(folder, `.${url === "/" ? "/index.html" : url}`);
    if (!file.startsWith(folder) || !existsSync(file)) return answer.writeHead(404).end();
    answer.writeHead(200, { "Content-Type": TYPES[extname(file)] ?? "application/octet-stream" });
    return createReadStream(file).pipe(answer);
  }).listen(0, "127.0.0.1");
  await new Promise((ready) => site.once("listening", ready));
  address = `http://127.0.0.1:${(site.address() as AddressInfo).port}/`;
});

afterAll(() => {
  site.close();
  rmSync(folder, { recursive: true, force: true });
});

describe("every component in every state, both themes", () => {
  it.each([LAPTOP, PHONE, ZOOMED])(
    "at $width px: each draws something, axe finds nothing, no text is too small, nothing sticks out",
    async (size) => {
      const page = await screens.open(address, { viewport: size });
      await page.locator("main article").first().waitFor();
      const drawn = await page.locator("main article").evaluateAll((all) =>
        all.map((each) => ({
          name: each.getAttribute("aria-label"),
          height: (each.lastElementChild as Element).getBoundingClientRect().height,
        })),
      );
      expect(drawn.length).toBeGreaterThan(60);
      expect(drawn.filter(({ height }) => height < 1)).toEqual([]);
      const small = await page.locator("main *:not(.visually-hidden, .visually-hidden *)").evaluateAll(
        (all, least) =>
          all
            .filter((each) =>
              [...each.childNodes].some(({ nodeType, textContent }) => nodeType === 3 && textContent?.trim()),
            )
            .filter((each) => Number.parseFloat(getComputedStyle(each).fontSize) < least - 0.1)
            .map((each) => each.outerHTML.slice(0, 120)),
        SMALLEST_TEXT,
      );
      expect(small).toEqual([]);
      await eventually(() => sideways(page)).toEqual([]);
      expect((await axeFindings(page)).filter(otherThanAgain), "light").toEqual([]);
      await page.emulateMedia({ colorScheme: "dark" });
      expect(await axeFindings(page, "colour"), "dark").toEqual([]);
    },
  );

  it("a refused field is told by its input", async () => {
    const page = await screens.open(address, { viewport: LAPTOP });
    const refused = page.getByRole("article", { name: "NumberField, refused" }).getByRole("textbox");
    expect(await refused.getAttribute("aria-invalid")).toBe("true");
    const described = (await refused.getAttribute("aria-describedby")) ?? "";
    expect(await page.locator(`[id="${described.split(" ").at(-1)}"]`).textContent()).toMatch(/is no length/);
  });
});
