import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

const root = join(import.meta.dirname, "../..");
const GALLERY = join(root, "tests/browser/components");

/** Why a component of `client/ui` has no state of its own on the page of components: browser tests of the views show it. */
const WITH_A_BUILD: Readonly<Record<string, string>> = {
  AddPart: "adds to the book",
  AsLeft: "keeps its children as they were left",
  AskBeforeSaving: "takes the page's focus",
  BuildOnScreen: "a frame for a build",
  Docs: "links to the served docs",
  Differences: "two states of a record",
  LeftOutTests: "tests of the book",
  Missing: "of a build",
  Resting: "keeps its children until the page rests",
  RestsOn: "tests of the book",
  Status: "a line of text, said by the page",
  VerdictMarks: "of a build",
  Warnings: "of a build",
};

describe("the page of components", () => {
  it("shows every component that needs no build, and names those that do", () => {
    const gallery = readdirSync(GALLERY)
      .map((file) => readFileSync(join(GALLERY, file), "utf8"))
      .join("\n");
    const all = readdirSync(join(root, "client/ui"))
      .filter((file) => file.endsWith(".tsx"))
      .map((file) => file.replace(".tsx", ""));
    const shown = all.filter((name) => gallery.includes(`#client/ui/${name}.tsx`));
    expect(shown.length).toBeGreaterThan(10);
    expect(all.filter((name) => !shown.includes(name)).sort()).toEqual(Object.keys(WITH_A_BUILD).sort());
  });
});
