import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { rigWords } from "#client/ui/empty/rigWords.ts";
import { ROOT } from "#tests/house/support/modules.ts";

const page = (name: string) => readFileSync(resolve(ROOT, "docs/rigs", `${name}.md`), "utf8");

describe("rigWords, from the pages of docs/rigs", () => {
  it.each(["motor", "curve", "friction", "pull"])("%s: says time, things and what can hurt", (name) => {
    const { takes, caution } = rigWords(page(name));
    expect(takes).toMatch(/^About \d+ minutes; .+\.$/);
    expect(caution).toMatch(/^\p{Lu}.+\.$/u);
  });

  it("says nothing where a page has no such lines", () => {
    expect(rigWords("# How to\n\nNothing.")).toEqual({ takes: "", caution: "" });
  });
});
