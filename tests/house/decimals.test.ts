import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT, sourcesIn } from "./support/modules.ts";

/** Writes decimals with a point, whatever the reader's language. */
const WRITES = /\.(?:toFixed\((?!0\))|toPrecision\(|toExponential\()/;
/** A number rounded in between, which is written by something else. */
const ROUNDS = /\bNumber\((?:[^()]|\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*\))*\)/g;
/** A number's text by way of String or a template. */
const SPELT = /(?:\bString\(|\$\{)\s*Number\(.*\.to(?:Fixed|Precision)\(/;

/** Where a point is right, or the mark is set by what shows it. */
const ALLOWED: Readonly<Record<string, string>> = {
  "shared/units/format.ts": "the one place that writes numbers",
  "shared/units/shown.ts": "for files and fields, whose kit sets the reader's mark",
  "shared/book/size/need/records.ts": "filled into a field",
  "client/ui/table.ts": "CSV",
  "client/views/curves/rotor/shownState.ts": "an address",
  "client/views/size/need/address.ts": "an address",
  "client/views/size/asked.ts": "an address",
  "client/views/rundown/asked.ts": "an address",
  "client/views/rundown/keep/wish.ts": "an address",
  "client/views/size/Fields.tsx": "a field, whose kit sets the reader's mark",
  "client/views/map/MapSettings.tsx": "a field, whose kit sets the reader's mark",
  "client/views/match/entry.ts": "a field, whose kit sets the reader's mark",
  "client/views/sheet/fitPaper.ts": "a length in CSS",
  "client/views/parts/list/SketchOf.tsx": "a path of SVG",
  "client/views/curves/leak/LeakSection.tsx": "split at its e, then written as it is read",
  "shared/physics/restriction/measuredLeak.ts":
    "an equation, whose figures are written as they are read where it is drawn",
  "client/views/rundown/runWorkings.ts":
    "an equation, whose figures are written as they are read where it is drawn",
};

/** @returns whether a line writes a number with decimals by itself */
function writes(line: string): boolean {
  if (/^\s*(?:\*|\/\/|\/\*)/.test(line) || /\basRead\(/.test(line)) return false;
  return SPELT.test(line) || WRITES.test(line.replace(ROUNDS, ""));
}

describe("a figure on a screen", () => {
  it("has the reader's decimal mark: nothing but shared/units writes decimals", () => {
    const found = ["shared", "client"].flatMap((room) =>
      sourcesIn(room).flatMap((path) => {
        const lines = readFileSync(resolve(ROOT, path), "utf8").split("\n");
        return lines.filter(writes).map((line) => ({ path, line: line.trim() }));
      }),
    );
    expect(found.filter(({ path }) => !ALLOWED[path])).toEqual([]);
    const needed = new Set(found.map(({ path }) => path));
    expect(Object.keys(ALLOWED).filter((path) => !needed.has(path))).toEqual([]);
  });

  it.each([
    [`\`\${power.toPrecision(3)} W\``, true],
    ["<p>{friction.toFixed(2)}</p>", true],
    ["String(Number(value.toFixed(2)))", true],
    [`\`\${Number(value.toFixed(2))} of it\``, true],
    ["asRead(value.toPrecision(4))", false],
    ["const rounded = Number((value / 4).toPrecision(3));", false],
    [`\`\${angle.toFixed(0)}°\``, false],
  ])("%s: %s", (line, found) => {
    expect(writes(line)).toBe(found);
  });
});
