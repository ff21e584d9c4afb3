import { readdirSync, readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { type ESTree, parseSync } from "vite";

export const ROOT = resolve(import.meta.dirname, "../../..");

/** A name that an import, or an export from elsewhere, takes from another file; `*` takes all of them. */
export interface Taken {
  readonly from: string;
  readonly name: string;
}

/** One declaration at the top level of a file, and all that it names. */
export interface Declaration {
  readonly name: string;
  readonly names: ReadonlySet<string>;
  /** Files that it loads by `import()` or starts as a worker. */
  readonly loads: readonly string[];
}

/** One source file: what stands at its top level, and how its names leave and enter it. */
export interface SourceFile {
  readonly path: string;
  readonly declarations: readonly Declaration[];
  /** Statements that run as soon as the file is loaded. */
  readonly statements: readonly Declaration[];
  readonly imports: ReadonlyMap<string, Taken>;
  readonly exports: ReadonlyMap<string, Taken>;
  readonly exportsAllOf: readonly string[];
  /** Files that this one imports, types aside. */
  readonly loads: readonly string[];
}

type Tree = ESTree.Node & Readonly<Record<string, unknown>>;

/** @returns paths of all sources in a folder, from the top level */
export function sourcesIn(folder: string): string[] {
  return readdirSync(resolve(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && !entry.name.endsWith(".d.ts"))
    .map((entry) => relative(ROOT, resolve(entry.parentPath, entry.name)));
}

/** @returns a specifier's file as a path from the top level; null for packages and styles */
function fileOf(from: string, specifier: string): string | null {
  const path = specifier.startsWith("#")
    ? specifier.slice(1)
    : specifier.startsWith(".")
      ? relative(ROOT, resolve(ROOT, dirname(from), specifier))
      : null;
  return path !== null && /\.tsx?$/.test(path) ? path : null;
}

const isNode = (value: unknown): value is Tree =>
  typeof value === "object" && value !== null && typeof (value as Tree).type === "string";

/** Fields of a node that hold the name of a property, which is no reference. */
function labelOf(node: Tree): string | null {
  if (node.computed === true) return null;
  if (node.type === "MemberExpression" || node.type === "JSXMemberExpression") return "property";
  if (node.type === "JSXAttribute") return "name";
  if (node.type === "Property") return node.shorthand === true ? null : "key";
  return "key";
}

/** Gathers every name that a node refers to, and every file that it loads at run time. */
function gather(node: Tree, path: string, names: Set<string>, loads: Set<string>): void {
  if (node.type === "Identifier" || node.type === "JSXIdentifier") names.add(String(node.name));
  if (node.type === "Literal" && typeof node.value === "string" && /^\.\.?\/.*\.tsx?$/.test(node.value)) {
    const file = fileOf(path, node.value);
    if (file !== null) loads.add(file);
  }
  const label = labelOf(node);
  for (const [field, value] of Object.entries(node)) {
    if (field === label) continue;
    for (const child of Array.isArray(value) ? value : [value])
      if (isNode(child)) gather(child, path, names, loads);
  }
}

function boundNames(pattern: Tree): string[] {
  if (pattern.type === "Identifier") return [pattern.name];
  if (pattern.type === "ObjectPattern")
    return (pattern.properties as unknown as Tree[]).flatMap((one) =>
      boundNames((one.value ?? one.argument) as Tree),
    );
  if (pattern.type === "ArrayPattern")
    return (pattern.elements as unknown as (Tree | null)[]).flatMap((one) =>
      one === null ? [] : boundNames(one),
    );
  if (pattern.type === "AssignmentPattern") return boundNames(pattern.left as unknown as Tree);
  if (pattern.type === "RestElement") return boundNames(pattern.argument as unknown as Tree);
  return [];
}

const namesDeclared = (node: Tree): string[] => {
  if (node.type === "VariableDeclaration")
    return (node.declarations as unknown as Tree[]).flatMap((one) => boundNames(one.id as Tree));
  return isNode(node.id) && node.id.type === "Identifier" ? [node.id.name] : [];
};

function declaration(node: Tree, name: string, path: string): Declaration {
  const names = new Set<string>();
  const loads = new Set<string>();
  gather(node, path, names, loads);
  return { name, names, loads: [...loads] };
}

const nameOf = (node: unknown): string => {
  const { name, value } = node as { name?: string; value?: string };
  return name ?? value ?? "";
};

/** One `const a = …, b = …` is as many declarations as it has names that stand by themselves. */
function split(node: Tree): Tree[] {
  return node.type === "VariableDeclaration"
    ? (node.declarations as unknown as Tree[]).map(
        (one) => ({ ...node, declarations: [one] }) as unknown as Tree,
      )
    : [node];
}

/** Reads one source as text. */
export function readSource(path: string, text: string): SourceFile {
  const imports = new Map<string, Taken>();
  const exports = new Map<string, Taken>();
  const declarations: Declaration[] = [];
  const statements: Declaration[] = [];
  const exportsAllOf: string[] = [];
  const loads = new Set<string>();
  const declare = (node: Tree, isExported: boolean, asDefault = false) => {
    for (const part of split(node)) {
      const names = namesDeclared(part);
      if (asDefault && names.length === 0) names.push("default");
      for (const name of names) {
        declarations.push(declaration(part, name, path));
        if (isExported) exports.set(asDefault ? "default" : name, { from: path, name });
      }
      if (names.length === 0) statements.push(declaration(part, "", path));
    }
  };
  for (const node of parseSync(path, text).program.body as unknown as Tree[]) {
    const from = isNode(node.source) ? fileOf(path, nameOf(node.source)) : null;
    if (from !== null && node.importKind !== "type" && node.exportKind !== "type") loads.add(from);
    if (node.type === "ImportDeclaration") {
      for (const one of node.specifiers as unknown as Tree[]) {
        const name =
          one.type === "ImportSpecifier"
            ? nameOf(one.imported)
            : one.type === "ImportDefaultSpecifier"
              ? "default"
              : "*";
        if (from !== null) imports.set(nameOf(one.local), { from, name });
      }
    } else if (node.type === "ExportAllDeclaration") {
      if (from !== null) exportsAllOf.push(from);
    } else if (node.type === "ExportDefaultDeclaration")
      declare(node.declaration as unknown as Tree, true, true);
    else if (node.type === "ExportNamedDeclaration" && isNode(node.declaration))
      declare(node.declaration, true);
    else if (node.type === "ExportNamedDeclaration")
      for (const one of node.specifiers as unknown as Tree[])
        exports.set(nameOf(one.exported), { from: from ?? path, name: nameOf(one.local) });
    else declare(node, false);
  }
  return { path, declarations, statements, imports, exports, exportsAllOf, loads: [...loads] };
}

/** Reads all sources of the rooms that a user gets something of. */
export function readHouse(): Map<string, SourceFile> {
  return new Map(
    ["shared", "server", "client", "seed-data"]
      .flatMap(sourcesIn)
      .map((path) => [path, readSource(path, readFileSync(resolve(ROOT, path), "utf8"))] as const),
  );
}
