import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Browser } from "playwright-core";

const ICONS = resolve("client", "public", "icons");
/** Home screens that take no drawing ask for these [px]; 180 is the one that iOS asks for. */
export const ICON_SIZES = [180, 192, 512] as const;

/** Draws the icons of the home screen anew, each from the one drawing. */
export async function drawIcons(browser: Browser): Promise<void> {
  const drawing = readFileSync(join(ICONS, "icon.svg")).toString("base64");
  for (const size of ICON_SIZES) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const image = `<img width="${size}" height="${size}" src="data:image/svg+xml;base64,${drawing}">`;
    await page.setContent(`<style>body{margin:0}img{display:block}</style>${image}`);
    writeFileSync(join(ICONS, `icon-${size}.png`), await page.screenshot());
    await page.close();
  }
}
