import { readdirSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { buildSite, withServer } from "../benchmarks/site.ts";
import { findChromium } from "../browser/support/chromium.ts";
import { drawIcons } from "./icons.ts";

const OUT = resolve("docs", "pictures");
/** All pictures together: they travel with every copy of the repository [bytes]. */
const MOST = 200_000;
const QUALITY = 0.6;
const PATIENCE = 60_000;

const LAPTOP = { width: 1280, height: 860 } as const;

/** A picture of the docs: where it is taken, and what is done first. */
interface Picture {
  readonly name: string;
  readonly viewport: { readonly width: number; readonly height: number };
  readonly path: string;
  readonly ready: (page: Page) => Promise<unknown>;
}

/** Once every panel has its figures. */
const still = async (page: Page) => {
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
};

const curves = async (page: Page) => {
  await page.locator(".curves-meaning").waitFor();
  await still(page);
};

const PICTURES: readonly Picture[] = [
  {
    name: "match",
    viewport: LAPTOP,
    path: "/match/pane-crawler",
    ready: async (page) => {
      await page.locator(".verdict-figures", { hasText: "%" }).waitFor();
      await page.getByRole("button", { name: "Dismiss these hints" }).click();
      await still(page);
    },
  },
  {
    name: "working",
    viewport: { width: 900, height: 780 },
    path: "/attitudes/pane-crawler",
    ready: async (page) => {
      await page.locator(".attitude-table .worked").first().waitFor();
      await still(page);
      await page.locator(".attitude-table tbody tr", { hasText: "Wall" }).locator(".worked").first().click();
      const dialog = page.locator(".working-dialog");
      await dialog.locator("math").first().waitFor();
      await dialog.locator("summary", { hasText: "pull" }).first().click();
    },
  },
  {
    name: "curve",
    viewport: { width: 1000, height: 720 },
    path: "/curves/rotors/swept-nine",
    ready: curves,
  },
  {
    name: "pulls",
    viewport: { width: 1000, height: 720 },
    path: "/curves/skirts/square-lip",
    ready: curves,
  },
];

/** A PNG as WebP, by the browser itself: about a quarter of the bytes. */
async function asWebP(page: Page, png: Buffer): Promise<Buffer> {
  const url = await page.evaluate(
    async ([source, quality]) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [image.width, image.height];
      canvas.getContext("2d")?.drawImage(image, 0, 0);
      return canvas.toDataURL("image/webp", quality);
    },
    [`data:image/png;base64,${png.toString("base64")}`, QUALITY] as const,
  );
  return Buffer.from(url.slice(url.indexOf(",") + 1), "base64");
}

async function take(browser: Browser, address: string, picture: Picture): Promise<number> {
  const { name, viewport, path, ready } = picture;
  const context = await browser.newContext({
    viewport,
    colorScheme: "light",
    reducedMotion: "reduce",
    baseURL: address,
    serviceWorkers: "block",
  });
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  await page.goto(path);
  await ready(page);
  const png = await page.screenshot();
  // Away from the app, whose content policy takes no picture from elsewhere.
  await page.goto("about:blank");
  const webp = await asWebP(page, png);
  writeFileSync(join(OUT, `${name}.webp`), webp);
  await context.close();
  return webp.length;
}

/** Takes every picture of the docs from the demo as it is shipped, and draws the icons. */
async function takeAll(address: string): Promise<void> {
  for (const old of readdirSync(OUT)) rmSync(join(OUT, old));
  const browser = await chromium.launch({ executablePath: findChromium(), args: ["--no-sandbox"] });
  let whole = 0;
  try {
    await drawIcons(browser);
    for (const picture of PICTURES) {
      const bytes = await take(browser, address, picture);
      whole += bytes;
      console.log(`docs/pictures/${picture.name}.webp, ${Math.round(bytes / 1000)} kB`);
    }
  } finally {
    await browser.close();
  }
  if (whole > MOST) throw new Error(`The pictures are ${whole} bytes together, ${MOST} are allowed.`);
}

await buildSite();
await withServer(({ address }) => takeAll(address));
