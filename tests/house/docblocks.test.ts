import { readdirSync, readFileSync } from "node:fs";
import { relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");
/** The rooms whose functions compute: their public docs give meaning and unit of what goes in and comes out. */
const ROOMS = ["numeric", "physics", "fit", "decide"] as const;
const EXPORTED =
  /(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?^export function (\w+)(?:<[^(]*>)?\(([\s\S]*?)\)\s*(?::\s*([^{\n]*)|\{)/gm;

interface Exported {
  readonly name: string;
  readonly docs: string;
  readonly parameters: readonly string[];
  /** type of what comes back, as written; empty where it is an object written out */
  readonly returned: string;
}

/** Splits a parameter list at its outer commas; a destructured parameter counts by its place alone. */
function parametersOf(list: string): string[] {
  const parts: string[] = [];
  let [depth, start] = [0, 0];
  for (let i = 0; i <= list.length; i++) {
    if ("([{<".includes(list[i] ?? " ")) depth += 1;
    if (")]}>".includes(list[i] ?? " ") && list[i - 1] !== "=") depth -= 1;
    if (i < list.length && !(list[i] === "," && depth === 0)) continue;
    parts.push(list.slice(start, i).trim());
    start = i + 1;
  }
  return parts.flatMap((part) => /^(\w+)\s*[?:=]/.exec(part)?.[1] ?? []);
}

function exportedIn(file: string): Exported[] {
  return [...readFileSync(file, "utf8").matchAll(EXPORTED)].map(
    ([, docs = "", name, list, returned = ""]) => ({
      name,
      docs,
      parameters: parametersOf(list),
      returned: returned.trim(),
    }),
  );
}

function filesOf(room: string): string[] {
  return readdirSync(resolve(ROOT, "shared"), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => resolve(entry.parentPath, entry.name))
    .filter((file) => relative(resolve(ROOT, "shared"), file).startsWith(`${room}/`));
}

const UNIT = /\[[^\]]+\]/;
const NUMBER = /^(number|Float64Array)\b/;

/** What a docblock without `@param` owes: what comes back, and its unit where that is a number. */
function briefFaults({ docs, returned }: Exported): string[] {
  const found: string[] = [];
  if (returned !== "void" && !docs.includes("@returns")) found.push("misses @returns");
  if (NUMBER.test(returned) && !UNIT.test(docs)) found.push("gives no unit of the number that comes back");
  return found;
}

/** A docblock that says what comes back is enough for a helper; a full one names every parameter. */
function faults(exported: Exported): string[] {
  const { docs, parameters } = exported;
  if (docs === "") return ["has no docblock"];
  if (!docs.includes("@param")) return briefFaults(exported);
  const found: string[] = [];
  for (const name of parameters) if (!docs.includes(`@param ${name} `)) found.push(`misses @param ${name}`);
  if (!UNIT.test(docs)) found.push("gives no unit in brackets");
  if (!/@returns/.test(docs) && !/Writes|Stops|Checks/.test(docs)) found.push("misses @returns");
  return found;
}

describe("the search for exported functions", () => {
  it("finds more than a hundred of them, parameters included", () => {
    const all = ROOMS.flatMap(filesOf).flatMap(exportedIn);
    expect(all.length).toBeGreaterThan(100);
    expect(all.find((item) => item.name === "gapFlow")?.parameters).toEqual(["gap", "air", "pressure"]);
  });
});

describe("the search for faults", () => {
  it.each([
    ["", "number", ["has no docblock"]],
    ["/** Half of x. */", "number", ["misses @returns", "gives no unit of the number that comes back"]],
    ["/** @returns half of x */", "number | null", ["gives no unit of the number that comes back"]],
    ["/** @returns half of x [m] */", "number", []],
    ["/** Halves x in place. */", "void", []],
    ["/** Half of x. @param x - a length */", "number", ["gives no unit in brackets", "misses @returns"]],
    ["/** Half. @param y - a length [m] @returns half [m] */", "number", ["misses @param x"]],
  ])("in %s of what returns %s", (docs, returned, expected) => {
    expect(faults({ name: "half", docs, parameters: ["x"], returned })).toEqual(expected);
  });
});

describe("public docs of the rooms that compute", () => {
  it.each(ROOMS)("shared/%s: every exported function says what goes in and comes out, with units", (room) => {
    const wrong = filesOf(room).flatMap((file) =>
      exportedIn(file).flatMap((item) =>
        faults(item).map((fault) => `${relative(ROOT, file)} ${item.name} ${fault}`),
      ),
    );
    expect(wrong).toEqual([]);
  });
});
