import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { DIMENSION_NAMES, dimension } from "#shared/units/dimensions.ts";
import { CHOSEN } from "#shared/units/showing.ts";
import { ROOT, sourcesIn } from "./support/modules.ts";

/** Not told from other words of the code, or from the names of coefficients: "in", "lb", "psi". */
const WORDS = ["in", "ft", "oz", "lb", "kg", "gf", "kgf", "psi", "Hz", "thou"];
const LABELS = [...new Set(CHOSEN.flatMap((name) => dimension(name).shown.map(({ label }) => label)))].filter(
  (label) => label.length > 1 && !WORDS.includes(label),
);

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
const UNIT = `(?:${LABELS.map(escaped).join("|")})`;

/** A unit behind a figure, behind a comma or in brackets in a text, or a text that is one: "${x} mm", "flow, L/s", "flow [L/s]". */
const NAMED = new RegExp(
  [
    `(?:\\} ?|\\\\u202f|\\d )${UNIT}(?![\\w²³/·])`,
    `"[^"]*, ${UNIT}"`,
    `"[^"]*[[(]${UNIT}[\\])][^"]*"`,
    `"${UNIT}"`,
  ].join("|"),
  "u",
);

/** What may name them: words that files, wires and makers use, and examples, which are said in the unit shown. */
const ALLOWED: readonly RegExp[] = [
  /^client\/views\/bench\/import\/(headers|examples)\.ts:/,
  /^client\/views\/bench\/record\/headerNames\.ts:/,
  /example: "/,
  /nominal: "/,
  /placeholder: "/,
  /length\([^)]*, "[\d.]+ mm"\)/,
  /Resistance at 20 °C|than at 20 °C/,
  // SI units of a working, and what an address is written in
  /^client\/ui\/working\/(workingText|sampled)\.ts:/,
  /^client\/views\/(?:curves|choose)\/[\w/]*Workings\.ts:/,
  /^client\/views\/curves\/rotor\/shownState\.ts:.*positive\(/,
  // of an inertia no unit is chosen
  /of friction\.$/,
  /Pick<PartialMoment/,
];

const isComment = (line: string) => /^\s*(\*|\/\/|\/\*)/.test(line);

describe("every view", () => {
  it("names no unit whose choice is the book's: it names the quantity, and showing.ts the unit", () => {
    const found = sourcesIn("client").flatMap((path) =>
      readFileSync(resolve(ROOT, path), "utf8")
        .split("\n")
        .filter((line) => !isComment(line) && NAMED.test(line.replace(/\/\*.*?\*\//g, "")))
        .map((line) => `${path}: ${line.trim()}`)
        .filter((line) => !ALLOWED.some((allowed) => allowed.test(line))),
    );
    expect(found).toEqual([]);
  });
});

describe("a quantity whose unit is chosen", () => {
  it("has an inch unit among those it offers, where it has one", () => {
    for (const name of DIMENSION_NAMES) {
      const { inch, shown, chosenFor } = dimension(name);
      if (inch === undefined) continue;
      expect(chosenFor, name).toBeDefined();
      expect(
        shown.map(({ label }) => label),
        name,
      ).toContain(inch);
    }
  });
});
