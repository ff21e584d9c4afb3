import { readdirSync, readFileSync } from "node:fs";
import { relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "./support/modules.ts";

const ROOMS = ["shared", "server", "client", "tests", "seed-data", "docs"];
/** A file or a folder of a room, in code: `shared/model/limits.ts`, `client/views/`. */
const NAMED = /`([\w.-]+(?:\/[\w.-]*)+|[\w-]+\.(?:ts|tsx))`/g;

/** Every file and folder of the house, folders with their last slash. */
function placesOf(rooms: readonly string[]): string[] {
  return rooms.flatMap((room) =>
    readdirSync(resolve(ROOT, room), { recursive: true, withFileTypes: true }).map((entry) => {
      const path = relative(ROOT, resolve(entry.parentPath, entry.name));
      return entry.isDirectory() ? `${path}/` : path;
    }),
  );
}

/** @returns what a text names that is nowhere, by its path or by the end of it */
function missing(text: string, places: readonly string[]): string[] {
  const ends = (name: string) => places.some((place) => `/${place}`.endsWith(`/${name}`));
  const names = [...text.matchAll(NAMED)].map(([, name]) => name);
  return [...new Set(names)].filter((name) => !ends(name) && !ends(`${name}/`));
}

describe("files and folders that DEVELOPERS.md names", () => {
  it("are there", () => {
    const text = readFileSync(resolve(ROOT, "DEVELOPERS.md"), "utf8");
    expect([...text.matchAll(NAMED)].length).toBeGreaterThan(40);
    expect(missing(text, placesOf(ROOMS))).toEqual([]);
  });

  it("that are gone are found, by path or by name alone", () => {
    const text = "see `a/b.ts`, `b.ts`, `a/c/`, `a/old.ts`, `gone.ts` and `npm test`";
    expect(missing(text, ["a/b.ts", "a/c/"])).toEqual(["a/old.ts", "gone.ts"]);
  });
});
