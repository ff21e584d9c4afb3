import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { parseSync } from "vite";
import { describe, expect, it } from "vitest";
import { ROOT, sourcesIn } from "./support/modules.ts";

/** Lines that a function has at most. */
const MOST = 60;

/** Longer functions, and why each is one piece; its own docblock says so too. */
const WHOLE: Readonly<Record<string, string>> = {
  "shared/physics/point/newton.ts solveCase": "the loop of sweeps and sampling: nothing is called in it",
  "shared/physics/point/newtonWarm.ts solveWarmCase":
    "the same with a warm winding: nothing is allocated in it",
};

interface Measured {
  /** file and name: that of the function, else of what it is given to */
  readonly name: string;
  readonly lines: number;
}

type Tree = Readonly<Record<string, unknown>>;

const FUNCTIONS = ["FunctionDeclaration", "FunctionExpression", "ArrowFunctionExpression"];

const nameIn = (node: unknown): string | null => (node as { name?: string } | null)?.name ?? null;

/** @returns what a node calls the functions within it; null where it gives no name */
function givenName(node: Tree): string | null {
  if (node.type === "FunctionDeclaration" || node.type === "VariableDeclarator") return nameIn(node.id);
  return node.type === "MethodDefinition" || node.type === "Property" ? nameIn(node.key) : null;
}

/** Measures every function of a node, those within others as well. */
function gather(node: unknown, name: string, linesOf: (node: Tree) => number, into: Measured[]): void {
  if (Array.isArray(node)) for (const child of node) gather(child, name, linesOf, into);
  if (Array.isArray(node) || typeof node !== "object" || node === null) return;
  const tree = node as Tree;
  const own = givenName(tree) ?? name;
  if (FUNCTIONS.includes(String(tree.type))) into.push({ name: own, lines: linesOf(tree) });
  for (const child of Object.values(tree)) gather(child, own, linesOf, into);
}

function functionsIn(path: string, source: string): Measured[] {
  const found: Measured[] = [];
  const linesOf = ({ start, end }: Tree) => source.slice(Number(start), Number(end)).split("\n").length;
  gather(parseSync(path, source).program.body, "", linesOf, found);
  return found.map(({ name, lines }) => ({ name: `${path} ${name}`, lines }));
}

const tooLong = (functions: readonly Measured[]): string[] => [
  ...new Set(functions.filter(({ lines }) => lines > MOST).map(({ name }) => name)),
];

describe("a function", () => {
  it("has 60 lines at most, but where said why; and nothing is said of one that is short", () => {
    const all = ["shared", "server", "client", "seed-data"]
      .flatMap(sourcesIn)
      .flatMap((path) => functionsIn(path, readFileSync(resolve(ROOT, path), "utf8")));
    expect(all.length).toBeGreaterThan(5000);
    expect(tooLong(all).sort()).toEqual(Object.keys(WHOLE).sort());
  });

  it("that is longer says in its docblock that it is one on purpose", () => {
    const silent = Object.keys(WHOLE).filter((each) => {
      const [path, name] = each.split(" ");
      const source = readFileSync(resolve(ROOT, path), "utf8");
      const before = source.slice(0, source.indexOf(`function ${name}(`));
      return !before.slice(before.lastIndexOf("/**")).includes("One function on purpose");
    });
    expect(silent).toEqual([]);
  });
});

describe("the measure of a function", () => {
  const body = (lines: number) => "\n  run();".repeat(lines - 2);
  const found = (source: string) => tooLong(functionsIn("a.tsx", source));

  it("is its lines from first to last: 60 pass, 61 don't", () => {
    expect(found(`function a() {${body(60)}\n}`)).toEqual([]);
    expect(found(`function a() {${body(61)}\n}`)).toEqual(["a.tsx a"]);
  });

  it("is taken of arrows, methods, components and functions within others, whatever they are given to", () => {
    const long = `{${body(61)}\n}`;
    expect(found(`const b = () => ${long};`)).toEqual(["a.tsx b"]);
    expect(found(`class C { d() ${long} }`)).toEqual(["a.tsx d"]);
    expect(found(`const e = { f: () => ${long} };`)).toEqual(["a.tsx f"]);
    expect(found(`const g = useMemo(() => ${long}, []);`)).toEqual(["a.tsx g"]);
    expect(found(`export default function H() ${long}`)).toEqual(["a.tsx H"]);
    expect(found(`const I = () => <p onClick={() => ${long}} />;`)).toEqual(["a.tsx I"]);
  });

  it("counts letters beyond the Latin ones as one, so that lines stay where they are", () => {
    const ahead = `const said = "${"ψ 𝜑 – ".repeat(50)}";\n`;
    expect(found(`${ahead}function a() {${body(60)}\n}\n${body(9)}`)).toEqual([]);
  });
});
