import { describe, expect, it } from "vitest";
import { readHouse, readSource, type SourceFile } from "./support/modules.ts";
import { unreached } from "./support/reach.ts";

/** What a user starts: the server, its worker threads, the page, the page that pairs a device, what keeps the pages, the making of the demo, the build. */
const ENTRIES = [
  "server/main.ts",
  "server/threads/worker.ts",
  "client/main.tsx",
  "client/pair/main.tsx",
  "client/offline/serviceWorker.ts",
  "seed-data/generate.ts",
  "server/backup.ts",
  "server/predict.ts",
  "server/vite.config.ts",
  "client/vite.config.ts",
];

const house = readHouse();

/** @returns files as they are written here, in the place of the house's own */
const written = (files: Readonly<Record<string, string>>) =>
  new Map(Object.entries(files).map(([path, text]) => [path, readSource(path, text)]));

describe("every declaration of shared/, server/ and client/", () => {
  it("is reached from what a user starts, not by tests alone", () => {
    expect(house.size).toBeGreaterThan(500);
    expect(unreached(house, ENTRIES).map(({ path, name }) => `${path} ${name}`)).toEqual([]);
  });
});

describe("the search for what is not reached", () => {
  const names = (files: Readonly<Record<string, string>>) => {
    return unreached(written(files), ["a/main.ts"]).map(({ name }) => name);
  };

  it("finds a function, a type and a constant that only their own kind leads to", () => {
    const other =
      "export const used = 1; export function dead() { return LEFT; } const LEFT = 2; export type Old = string;";
    expect(names({ "a/main.ts": 'import { used } from "./b.ts"; run(used);', "a/b.ts": other })).toEqual([
      "dead",
      "LEFT",
      "Old",
    ]);
  });

  it("does not take a property's name for a reference", () => {
    const main = 'import "./b.ts"; run.dead({ dead: 1 });';
    expect(names({ "a/main.ts": main, "a/b.ts": "export const dead = 1;" })).toEqual(["dead"]);
  });

  it("finds a file that only passes names on, to nobody", () => {
    const files = {
      "a/main.ts": 'import { x } from "./c.ts"; run(x);',
      "a/b.ts": 'export { x } from "./c.ts";',
    };
    expect(names({ ...files, "a/c.ts": "export const x = 1;" })).toEqual(["the whole file"]);
  });

  it("follows renamed exports, stars, loaded files and workers", () => {
    const main =
      'import { shown } from "./b.ts"; const load = () => import("./d.ts"); load(shown); new URL("./e.ts", here);';
    expect(
      names({
        "a/main.ts": main,
        "a/b.ts": 'export { kept as shown } from "./c.ts"; export * from "./c.ts";',
        "a/c.ts": "export const kept = 1;",
        "a/d.ts": "export default function View() { return part; } const part = 1;",
        "a/e.ts": "const answer = 1; reply(answer);",
      }),
    ).toEqual([]);
  });
});

/** @returns the first circle of imports, types aside, that each file closes */
function circles(house: ReadonlyMap<string, Pick<SourceFile, "loads">>): string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const visit = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path);
    if (at >= 0) found.push([...trail.slice(at), path].join(" → "));
    if (at >= 0 || done.has(path)) return;
    for (const next of house.get(path)?.loads ?? []) visit(next, [...trail, path]);
    done.add(path);
  };
  for (const path of house.keys()) visit(path, []);
  return found;
}

describe("imports, file by file", () => {
  it("never come back to the file that they start from", () => {
    expect(circles(house)).toEqual([]);
  });

  it("that do are found, however many files they pass; those of types alone are none", () => {
    const closed = { "a/a.ts": 'import "./b.ts";', "a/b.ts": 'export * from "./c.ts";' };
    expect(circles(written({ ...closed, "a/c.ts": 'import { x } from "./a.ts";' }))).toEqual([
      "a/a.ts → a/b.ts → a/c.ts → a/a.ts",
    ]);
    expect(circles(written({ ...closed, "a/c.ts": 'import type { X } from "./a.ts";' }))).toEqual([]);
  });
});
