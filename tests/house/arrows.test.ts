import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");

/** Which rooms of shared/ a room may import from, its own aside. Imports run one way. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  units: [],
  numeric: [],
  model: ["units"],
  physics: ["units", "numeric"],
  fit: ["units", "physics", "numeric"],
  decide: ["units", "fit", "physics", "numeric"],
  book: ["model", "units", "decide", "fit", "physics", "numeric"],
};
const PACKAGES: Readonly<Record<string, readonly string[]>> = { model: ["zod"] };

function filesIn(folder: string): string[] {
  if (!existsSync(resolve(ROOT, folder))) return [];
  return readdirSync(resolve(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => resolve(entry.parentPath, entry.name));
}

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^;'"]*?from\s+["']([^"']+)["']|import\(\s*["']([^"']+)["']\s*\)|(?:^|\n)import\s+["']([^"']+)["']/g;

function importsOf(file: string): string[] {
  return [...readFileSync(file, "utf8").matchAll(IMPORT)].map((match) => match[1] ?? match[2] ?? match[3]);
}

/** @returns where a relative import leads, as a path from the top level */
const target = (file: string, specifier: string) => relative(ROOT, resolve(dirname(file), specifier));

describe("imports of shared/, room by room", () => {
  it.each(Object.keys(ALLOWED))("shared/%s imports only the rooms below it and its own packages", (room) => {
    for (const file of filesIn(`shared/${room}`)) {
      for (const specifier of importsOf(file)) {
        const from = relative(ROOT, file);
        if (!specifier.startsWith(".")) {
          expect(PACKAGES[room] ?? [], `${from} imports ${specifier}`).toContain(specifier);
          continue;
        }
        const [top, to] = target(file, specifier).split("/");
        expect(top, `${from} imports ${specifier}`).toBe("shared");
        expect([room, ...ALLOWED[room]], `${from} imports ${specifier}`).toContain(to);
      }
    }
  });

  it("leaves no room of shared/ without a rule", () => {
    const rooms = readdirSync(resolve(ROOT, "shared"), { withFileTypes: true });
    for (const room of rooms) expect(Object.keys(ALLOWED), room.name).toContain(room.name);
  });
});

describe("imports of server/ and client/", () => {
  it.each([
    // package.json gives the version.
    ["server", ["server", "shared", "seed-data", "package.json"]],
    // What an empty bench says of a rig is the page that docs/ has of it.
    ["client", ["client", "shared", "package.json", "docs"]],
  ] as const)("%s imports nothing but itself and shared/", (room, allowed) => {
    for (const file of filesIn(room)) {
      for (const specifier of importsOf(file).filter((name) => name.startsWith("."))) {
        const [top] = target(file, specifier.split("?")[0]).split("/");
        expect(allowed, `${relative(ROOT, file)} imports ${specifier}`).toContain(top);
      }
    }
  });
});

describe("the top level", () => {
  it("holds the rooms and no more", () => {
    const expected = [
      "DEVELOPERS.md",
      "README.md",
      "client",
      "docs",
      "package-lock.json",
      "package.json",
      "seed-data",
      "server",
      "shared",
      "tests",
      "tsconfig.json",
    ];
    const found = readdirSync(ROOT).filter(
      (name) => !name.startsWith(".") && !["node_modules", "data"].includes(name),
    );
    for (const name of found) expect(expected).toContain(name);
  });
});
