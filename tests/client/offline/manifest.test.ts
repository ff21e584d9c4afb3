import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parseRoute } from "#client/app/router.ts";

const root = join(import.meta.dirname, "../../..");
const file = (path: string) => readFileSync(join(root, "client/public", path));

interface Manifest {
  readonly start_url: string;
  readonly icons: readonly { readonly src: string; readonly sizes: string; readonly purpose: string }[];
  readonly shortcuts: readonly { readonly url: string }[];
}
const manifest = JSON.parse(file("manifest.webmanifest").toString()) as Manifest;

/** Width and height stand behind the signature and the first chunk's head (PNG, third edition, 11.2.1). */
const sizeOf = (png: Buffer) => `${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`;

describe("what a home screen is told", () => {
  it("has every icon, as large as it says", () => {
    const pngs = manifest.icons.filter(({ src }) => src.endsWith(".png"));
    for (const { src, sizes } of pngs) expect(sizeOf(file(src)), src).toBe(sizes);
    expect(new Set(pngs.map(({ sizes }) => sizes))).toEqual(new Set(["192x192", "512x512"]));
    expect(file("icons/icon.svg").toString()).toContain("<svg");
  });

  it("names the icon that iOS asks for", () => {
    expect(readFileSync(join(root, "client/index.html"), "utf8")).toContain("/icons/icon-180.png");
    expect(sizeOf(file("icons/icon-180.png"))).toBe("180x180");
  });

  it("begins at a screen that there is, and so does every shortcut", () => {
    const urls = [manifest.start_url, ...manifest.shortcuts.map(({ url }) => url)];
    for (const url of urls) expect(parseRoute(url).view, url).not.toBe("missing");
  });
});
