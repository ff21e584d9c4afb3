import { describe, expect, it } from "vitest";
import { readHouse, readSource, type SourceFile } from "./support/modules.ts";

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
    expect(circles(readHouse(["shared", "server", "client", "seed-data"]))).toEqual([]);
  });

  it("that do are found, however many files they pass; those of types alone are none", () => {
    const house = (files: Readonly<Record<string, string>>) =>
      new Map(Object.entries(files).map(([path, text]) => [path, readSource(path, text)]));
    const closed = { "a/a.ts": 'import "./b.ts";', "a/b.ts": 'export * from "./c.ts";' };
    expect(circles(house({ ...closed, "a/c.ts": 'import { x } from "./a.ts";' }))).toEqual([
      "a/a.ts → a/b.ts → a/c.ts → a/a.ts",
    ]);
    expect(circles(house({ ...closed, "a/c.ts": 'import type { X } from "./a.ts";' }))).toEqual([]);
  });
});
