import type { Declaration, SourceFile } from "./modules.ts";

type House = ReadonlyMap<string, SourceFile>;

/** @returns where a file's exported name is declared; null where it names nothing of the house */
function origin(house: House, path: string, name: string, seen = new Set<string>()): Declaration | null {
  const file = house.get(path);
  if (file === undefined || seen.has(`${path} ${name}`)) return null;
  seen.add(`${path} ${name}`);
  const own = file.declarations.find((one) => one.name === name);
  const exported = file.exports.get(name);
  if (exported !== undefined && !(exported.from === path && exported.name === name))
    return origin(house, exported.from, exported.name, seen);
  if (own !== undefined) return own;
  const imported = file.imports.get(name);
  if (imported !== undefined) return origin(house, imported.from, imported.name, seen);
  for (const other of file.exportsAllOf) {
    const found = origin(house, other, name, seen);
    if (found !== null) return found;
  }
  return null;
}

/** Follows every name from the entry files on. */
class Walk {
  readonly reached = new Set<Declaration>();
  readonly loaded = new Set<string>();
  private readonly homes: ReadonlyMap<Declaration, string>;

  constructor(private readonly house: House) {
    this.homes = new Map(
      [...house.values()].flatMap((file) => file.declarations.map((one) => [one, file.path] as const)),
    );
  }

  /** An entry's own exports are what starts it. */
  enter(path: string): void {
    this.load(path);
    this.reachAll(path);
  }

  private load(path: string): void {
    const file = this.house.get(path);
    if (file === undefined || this.loaded.has(path)) return;
    this.loaded.add(path);
    for (const other of [...file.loads, ...file.exportsAllOf]) this.load(other);
    for (const statement of file.statements) this.follow(statement, path);
  }

  private reach(declaration: Declaration | null): void {
    if (declaration === null || this.reached.has(declaration)) return;
    this.reached.add(declaration);
    this.follow(declaration, this.homes.get(declaration) ?? "");
  }

  private follow(from: Declaration, path: string): void {
    const imports = this.house.get(path)?.imports;
    for (const name of from.names) {
      if (imports?.get(name)?.name === "*") this.reachAll(imports.get(name)?.from ?? "");
      else this.reach(origin(this.house, path, name));
    }
    for (const other of from.loads) {
      this.load(other);
      for (const name of ["default", ...from.names]) this.reach(origin(this.house, other, name));
    }
  }

  private reachAll(path: string): void {
    for (const name of this.house.get(path)?.exports.keys() ?? []) this.reach(origin(this.house, path, name));
  }
}

/** One declaration that no entry leads to. */
export interface Unreached {
  readonly path: string;
  readonly name: string;
}

/** @returns declarations that are not reached from any of the entry files, type by type and name by name */
export function unreached(house: House, entries: readonly string[]): Unreached[] {
  const walk = new Walk(house);
  for (const entry of entries) walk.enter(entry);
  return [...house.values()].flatMap((file) => {
    const left = file.declarations.filter((one) => !walk.reached.has(one));
    // A file that only passes names on has none of its own.
    const passesOn = file.declarations.length === 0 && !walk.loaded.has(file.path);
    const unreachedNames = passesOn ? ["the whole file"] : left.map(({ name }) => name);
    return unreachedNames.map((name) => ({ path: file.path, name }));
  });
}
