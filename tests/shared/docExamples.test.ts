import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { placesOf } from "#shared/decide/choose/places.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { rankedPage } from "#shared/decide/choose/rank.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { gathered } from "#shared/decide/choose/values.ts";
import { calibrate } from "#shared/fit/calibration.ts";
import { fitRotor } from "#shared/fit/rotorFit.ts";
import { chooseRequest } from "#shared/model/api/choose.ts";
import { predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** What an example may name: the house's own functions, and `book`, the demo. */
const SCOPE = {
  book: demoBook(),
  calibrate,
  chooseProblem,
  chooseRequest,
  fitRotor,
  gathered,
  placesOf,
  predict,
  prepare,
  rankedPage,
  resolveBuild,
  solveChunk,
};
/** The files whose function carries an example. */
const WITH_EXAMPLE = [
  "shared/fit/rotorFit.ts",
  "shared/physics/predict.ts",
  "shared/book/resolve.ts",
  "shared/fit/calibration.ts",
  "shared/decide/choose/solveChunk.ts",
] as const;
const CLAIM = /^(.+); \/\/ → (.+)$/gm;

/** @returns the first example of a file's docblocks, as code */
function exampleIn(path: string): string {
  const text = readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
  const found = /^ \* @example\n((?: \*(?!\/).*\n)+)/m.exec(text);
  if (!found) throw new Error(`${path} has no @example.`);
  return found[1].replaceAll(/^ \* ?/gm, "");
}

/** A number stands with the digits that are shown, anything else as it is. */
function asShown(value: unknown, shown: string): unknown {
  if (typeof value !== "number" || !Number.isFinite(value)) return value;
  const digits = shown.replaceAll(/e.*|\D/g, "").replace(/^0+(?=.)/, "").length;
  return Number(value.toPrecision(digits));
}

/** Runs an example; @returns what each line that shows a value came to, and what it shows */
function claimsOf(code: string): { line: string; value: unknown; shown: unknown }[] {
  const claims: { line: string; value: unknown; shown: unknown }[] = [];
  const told = code.replaceAll(
    CLAIM,
    (_, expression, shown) => `claim(${JSON.stringify(shown)}, ${expression}, ${shown});`,
  );
  const claim = (text: string, value: unknown, shown: unknown) =>
    claims.push({ line: text, value: asShown(value, text), shown });
  new Function(...Object.keys(SCOPE), "claim", told)(...Object.values(SCOPE), claim);
  return claims;
}

describe("examples in docblocks", () => {
  it.each(WITH_EXAMPLE)("of %s: run as they stand, and come to what they show", (path) => {
    const claims = claimsOf(exampleIn(path));
    expect(claims.length).toBeGreaterThan(1);
    for (const { line, value, shown } of claims) expect(value, line).toEqual(shown);
  });

  it("that show another value, or one digit more than is so, are found", () => {
    expect(claimsOf("1 / 3; // → 0.333")).toEqual([{ line: "0.333", value: 0.333, shown: 0.333 }]);
    expect(claimsOf("2 / 3; // → 0.66")).toEqual([{ line: "0.66", value: 0.67, shown: 0.66 }]);
    expect(claimsOf("[1]; // → [2]")).toEqual([{ line: "[2]", value: [1], shown: [2] }]);
  });
});
