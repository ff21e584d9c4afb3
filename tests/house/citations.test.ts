import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT, sourcesIn } from "./support/modules.ts";

const textOf = (path: string): string => readFileSync(resolve(ROOT, path), "utf8");

/** "docs/method/limits.md, Winding": a page, and a section of it where one is named. */
const CITATION = /(docs\/[\w/-]+\.md)(?:, (\p{Lu}[\p{L} ,-]*\p{L}))?/gu;

/** Headings of a page, and the bold words that begin a paragraph. */
const sectionsOf = (page: string): string[] =>
  [...page.matchAll(/^(?:#+ (.+)|(?:- )?\*\*(.+?)\*\*)/gm)].map(([, heading, lead]) =>
    (heading ?? lead).replace(/[.?:]$/, ""),
  );

/** @returns what is wrong with the pages that a text cites */
function faults(text: string, pageText: (path: string) => string | null): string[] {
  return [...text.matchAll(CITATION)].flatMap(([, path, section]) => {
    const page = pageText(path);
    if (page === null) return [`${path} doesn't exist`];
    return section === undefined || sectionsOf(page).includes(section)
      ? []
      : [`${path} has no section “${section}”`];
  });
}

const sources = ["shared", "server", "client", "seed-data"].flatMap(sourcesIn);

describe("pages of the method that the code cites", () => {
  it("exist, and so do the sections", () => {
    const wrong = sources.flatMap((path) =>
      faults(textOf(path), (page) => (existsSync(resolve(ROOT, page)) ? textOf(page) : null)).map(
        (fault) => `${path}: ${fault}`,
      ),
    );
    expect(wrong).toEqual([]);
  });

  it("are cited by path, never by a number that a reader has no list of", () => {
    expect(sources.filter((path) => /\bMETHOD\b/.test(textOf(path)))).toEqual([]);
  });

  it("are found missing, page or section", () => {
    const page = "# Limits\n## Winding\n**Throttle offset.** By a sweep.\n";
    const pages = (path: string) => (path === "docs/method/limits.md" ? page : null);
    expect(faults("docs/method/limits.md, Winding; docs/method/limits.md, Throttle offset", pages)).toEqual(
      [],
    );
    expect(faults("docs/method/limit.md", pages)).toEqual(["docs/method/limit.md doesn't exist"]);
    expect(faults("see docs/method/limits.md, Rotor)", pages)).toEqual([
      "docs/method/limits.md has no section “Rotor”",
    ]);
  });
});
