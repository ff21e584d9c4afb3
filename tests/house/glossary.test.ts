import { readdirSync, readFileSync } from "node:fs";
import { relative, resolve } from "node:path";
import { parseSync } from "vite";
import { describe, expect, it } from "vitest";
import { ROOT, sourcesIn } from "./support/modules.ts";

/** A word that is not used, what is said in its place, and where it means something else. */
interface Withdrawn {
  readonly word: RegExp;
  readonly instead: string;
  /** what the text around it says where the word is innocent */
  readonly innocent?: RegExp;
}

/** One thing, one word: what the house once said beside docs/glossary.md. */
const WITHDRAWN: readonly Withdrawn[] = [
  { word: /\bdoubts?\b/i, instead: "uncertainty" },
  { word: /how far it is known/i, instead: "uncertainty" },
  { word: /P\(hold\)|sure to hold/i, instead: "chance of holding" },
  { word: /\bgovern(s|ed|ing)?\b/i, instead: "first, as in “slips first”" },
  { word: /\bdepressions?\b/i, instead: "suction" },
  { word: /\b(suction|press) force\b/i, instead: "pull; of a propeller: thrust" },
  { word: /\b(a|another|each|the) choosing\b|\bchoosings\b/i, instead: "search" },
  { word: /\bbetters (it|them)\b/i, instead: "best trade-off" },
  {
    word: /\bhandles?\b/i,
    instead: "setting",
    // What a pointer drags on a chart is a handle, and so is part of a class name.
    innocent: /match-handles|handle-(slot|basis)|picked-handle|handle part-list/,
  },
  { word: /\bcups?\b/i, instead: "skirt", innocent: /suction cup/ },
  { word: /\barrival point\b/i, instead: "operating point" },
  {
    word: /\b(told|tell|tells) (\w+ ){0,3}apart\b/i,
    instead: "measured separately",
    // Letters, units and lines in a chart are told apart by whoever reads them.
    innocent: /milli and mega|UTF-16|dominance nor bounds/,
  },
  { word: /\bkept out\b/i, instead: "set aside, struck out or skipped" },
  { word: /\brest(s|ed)? on\b/i, instead: "based on" },
  { word: /\bmind the\b/i, instead: "watch out" },
  { word: /\badmi(t|ts|tted|ssions?)\b/i, instead: "parts to try" },
  { word: /\bcavity pressure\b/i, instead: "suction" },
  { word: /\bpinned sets?\b|\bsets? (solved|shown)\b/i, instead: "combination" },
];

/** What is history, or made by a program. */
const NOT_HELD = ["docs/changelog.md", "docs/benchmarks.md", "docs/accuracy.md"];

interface Sentence {
  readonly path: string;
  readonly text: string;
}

type Tree = Readonly<Record<string, unknown>>;

/** Gathers what a source says to people: its strings and the text between its tags; a word alone is a key. */
function gather(node: unknown, path: string, into: Sentence[]): void {
  if (Array.isArray(node)) for (const child of node) gather(child, path, into);
  if (Array.isArray(node) || typeof node !== "object" || node === null) return;
  const tree = node as Tree;
  if (tree.type === "ImportDeclaration") return;
  const { value } = tree;
  const text =
    (tree.type === "Literal" || tree.type === "JSXText") && typeof value === "string"
      ? value
      : tree.type === "TemplateElement"
        ? (value as { raw: string }).raw
        : "";
  if (/\s/.test(text.trim())) into.push({ path, text: text.replaceAll(/\s+/g, " ") });
  for (const child of Object.values(tree)) gather(child, path, into);
}

function saidIn(path: string, source: string): Sentence[] {
  const found: Sentence[] = [];
  gather(parseSync(path, source).program.body, path, found);
  return found;
}

/** @returns a page's lines without its code, each with its path */
function linesOf(path: string, page: string): Sentence[] {
  const prose = page.replaceAll(/```[\s\S]*?```|^ {4}.*$/gm, "").replaceAll(/`[^`]*`|\]\([^)]*\)/g, "");
  return prose.split("\n").map((text) => ({ path, text }));
}

/** @returns each use of a withdrawn word, and what to say instead */
const faults = (sentences: readonly Sentence[]): string[] =>
  sentences.flatMap(({ path, text }) =>
    WITHDRAWN.filter(({ word, innocent }) => word.test(text) && !innocent?.test(text)).map(
      ({ word, instead }) => `${path}: “${word.exec(text)?.[0]}” in “${text.trim()}”; say: ${instead}`,
    ),
  );

const read = (path: string): string => readFileSync(resolve(ROOT, path), "utf8");
const pages = [
  "README.md",
  "DEVELOPERS.md",
  ...readdirSync(resolve(ROOT, "docs"), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".md"))
    .map((entry) => relative(ROOT, resolve(entry.parentPath, entry.name))),
].filter((path) => !NOT_HELD.includes(path));

describe("one word for one thing", () => {
  it("in what screens, API and messages say: none that was withdrawn", () => {
    const said = ["shared", "server", "client"]
      .flatMap(sourcesIn)
      .flatMap((path) => saidIn(path, read(path)));
    expect(said.length).toBeGreaterThan(5000);
    expect(faults(said)).toEqual([]);
  });

  it("in the docs: none that was withdrawn", () => {
    const lines = pages.flatMap((path) => linesOf(path, read(path)));
    expect(lines.length).toBeGreaterThan(1000);
    expect(faults(lines)).toEqual([]);
  });

  it("a withdrawn word is found in a string, between tags and in a template; not in code, a key or its innocent sense", () => {
    const source =
      'const a = "no doubt left"; const b = <p>What it\n rests on</p>; const c = `the $' +
      '{a} handle moved`; f("handle"); const doubt = 1;';
    const found = faults(saidIn("a.tsx", source)).map((fault) => fault.split("”")[0]);
    expect(found).toEqual(["a.tsx: “doubt", "a.tsx: “rests on", "a.tsx: “handle"]);
    const page = "P(hold), `P(hold)`\n\n    a handle\n\na suction cup\n";
    expect(faults(linesOf("a.md", page))).toEqual(["a.md: “P(hold)” in “P(hold),”; say: chance of holding"]);
  });
});
