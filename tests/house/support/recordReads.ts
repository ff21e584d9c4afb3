import { resolve } from "node:path";
import {
  type Expression,
  type Identifier,
  isBindingElement,
  isIdentifier,
  isObjectBindingPattern,
  isObjectLiteralExpression,
  isPropertyAccessExpression,
  isShorthandPropertyAssignment,
  isSpreadAssignment,
  isTypeAliasDeclaration,
  isVariableDeclaration,
  type Node,
  type SourceFile,
} from "typescript/unstable/ast";
import { API, type Checker, type Symbol as Named, type Project, type Type } from "typescript/unstable/sync";
import { ROOT } from "./modules.ts";

/** A number, a word or a quantity that records keep, and where each step of its path is declared. */
export interface Leaf {
  readonly path: string;
  readonly steps: readonly (readonly string[])[];
}

/** The compiler's flag of an object type. */
const OBJECT = 1048576;
const DEEPEST = 12;

const placesOf = (symbol: Named | undefined): string[] =>
  (symbol?.declarations ?? []).map(({ path, index }) => `${path.slice(ROOT.length + 1)}:${index}`);

function nodesOf<T extends Node>(file: SourceFile, is: (node: Node) => node is T): T[] {
  const found: T[] = [];
  const visit = (node: Node): void => {
    if (is(node)) found.push(node);
    node.forEachChild(visit);
  };
  visit(file);
  return found;
}

/** What some files read of all that is declared, name by name as the compiler resolves it. */
export class Reads {
  /** places of declarations that are read by their name */
  private readonly read = new Set<string>();
  /** by a record's declaration: what its value is handed on as, where nothing of it is read on the spot */
  private readonly receivers = new Map<string, Type[]>();
  /** records' declarations that are handed on with no type to say as what */
  private readonly untyped = new Set<string>();
  /** names read in the rooms that compute */
  private readonly computed = new Set<string>();

  constructor(private readonly checker: Checker) {}

  add(file: SourceFile, computes: boolean): void {
    const accesses = nodesOf(file, isPropertyAccessExpression);
    if (computes) for (const { name } of accesses) this.computed.add((name as Node & { text: string }).text);
    const symbols =
      accesses.length > 0 ? this.checker.getSymbolAtLocation(accesses.map(({ name }) => name)) : [];
    symbols.forEach((symbol, i) => {
      const places = placesOf(symbol);
      for (const place of places) this.read.add(place);
      this.handOn(accesses[i], places);
    });
    this.addPatterns(file, computes);
  }

  /** `const { area } = skirt`: reads the property, and hands on what the variable is used for. */
  private addPatterns(file: SourceFile, computes: boolean): void {
    const patterns = nodesOf(file, isObjectBindingPattern);
    if (patterns.length === 0) return;
    const variables = new Map<string, readonly string[]>();
    const called = new Set<string>();
    this.checker.getTypeAtLocation(patterns).forEach((type, i) => {
      patterns[i].forEachChild((element) => {
        if (!type || !isBindingElement(element) || !element.name) return;
        const key = element.propertyName ?? element.name;
        if (!isIdentifier(key)) return;
        if (computes) this.computed.add(key.text);
        const places = placesOf(this.checker.getPropertyOfType(type, key.text));
        for (const place of places) this.read.add(place);
        const inModel = places.filter(isOfModel);
        if (inModel.length === 0 || !isIdentifier(element.name)) return;
        called.add(element.name.text);
        for (const own of placesOf(this.checker.getSymbolAtLocation(element.name)))
          variables.set(own, inModel);
      });
    });
    if (variables.size === 0) return;
    const names = nodesOf(file, isIdentifier).filter(({ text }) => called.has(text));
    const symbols = this.checker.getSymbolAtLocation(names);
    for (const [i, name] of names.entries()) {
      const symbol = isShorthandPropertyAssignment(name.parent)
        ? this.checker.getShorthandAssignmentValueSymbol(name.parent)
        : symbols[i];
      const places = placesOf(symbol).flatMap((own) => variables.get(own) ?? []);
      if (places.length > 0 && !isBindingElement(name.parent)) this.handOn(name, places);
    }
  }

  private handOn(node: Expression, places: readonly string[]): void {
    const inModel = places.filter(isOfModel);
    const { parent } = node;
    if (inModel.length === 0 || isPropertyAccessExpression(parent)) return;
    if (isVariableDeclaration(parent) && isObjectBindingPattern(parent.name)) return;
    const type = this.receiver(node);
    for (const place of inModel) {
      if (type) this.receivers.set(place, [...(this.receivers.get(place) ?? []), type]);
      else this.untyped.add(place);
    }
  }

  /** The type that a value is handed on as: that of the parameter, of the field, of the object it is spread into. */
  private receiver(node: Expression): Type | undefined {
    const { parent } = node;
    const holder = isSpreadAssignment(parent) || isShorthandPropertyAssignment(parent) ? parent.parent : null;
    if (!holder || !isObjectLiteralExpression(holder)) return this.checker.getContextualType(node);
    const whole = this.checker.getContextualType(holder);
    if (!whole || isSpreadAssignment(parent)) return whole;
    const field = this.checker.getPropertyOfType(whole, (node as Node as Identifier).text);
    return field && this.checker.getTypeOfSymbol(field);
  }

  /** @returns whether a leaf is read by its name, or in what one of its holders is handed on as */
  has({ path, steps }: Leaf): boolean {
    const words = path.replaceAll("[]", "").split(".").slice(1);
    const unread = steps.findIndex((step) => !step.some((place) => this.read.has(place)));
    if (unread < 0) return true;
    for (let i = unread - 1; i >= 0; i--) {
      const rest = words.slice(i + 1);
      for (const place of steps[i]) {
        if ((this.receivers.get(place) ?? []).some((type) => this.hasIn(type, rest, 0))) return true;
        if (this.untyped.has(place) && rest.every((word) => this.computed.has(word))) return true;
      }
    }
    return false;
  }

  private hasIn(type: Type, words: readonly string[], depth: number): boolean {
    const [word, ...rest] = words;
    if (word === undefined) return true;
    if (depth > DEEPEST) return false;
    if (type.isUnionType()) return type.getTypes().some((one) => this.hasIn(one, words, depth + 1));
    if (this.checker.isArrayLikeType(type))
      return this.checker.getTypeArguments(type as never).some((item) => this.hasIn(item, words, depth + 1));
    const property = this.checker.getPropertyOfType(type, word);
    const of = property && this.checker.getTypeOfSymbol(property);
    return (
      !!of && placesOf(property).some((place) => this.read.has(place)) && this.hasIn(of, rest, depth + 1)
    );
  }
}

const isOfModel = (place: string): boolean => place.startsWith("shared/model/");

/** @returns every leaf of a type alias, arrays and unions entered, a quantity counted as one */
export function leavesOf({ checker, program }: Project, path: string, alias: string): Leaf[] {
  const found = new Map<string, Leaf>();
  const visit = (type: Type, at: string, steps: Leaf["steps"], depth: number): void => {
    if (depth > DEEPEST) return;
    if (type.isUnionType()) for (const one of type.getTypes()) visit(one, at, steps, depth + 1);
    else if (checker.isArrayLikeType(type))
      for (const item of checker.getTypeArguments(type as never)) visit(item, `${at}[]`, steps, depth + 1);
    else visitObject(type, at, steps, depth);
  };
  const visitObject = (type: Type, at: string, steps: Leaf["steps"], depth: number): void => {
    const properties = (type.flags & OBJECT) === 0 ? [] : checker.getPropertiesOfType(type);
    const names = properties.map(({ name }) => name).sort();
    if (properties.length === 0 || names.join() === "unit,value") {
      const known = found.get(at)?.steps ?? [];
      found.set(at, { path: at, steps: steps.map((step, i) => [...(known[i] ?? []), ...step]) });
      return;
    }
    for (const property of properties) {
      const of = checker.getTypeOfSymbol(property);
      if (of) visit(of, `${at}.${property.name}`, [...steps, placesOf(property)], depth + 1);
    }
  };
  const file = program.getSourceFile(resolve(ROOT, path));
  const declared = file && nodesOf(file, isTypeAliasDeclaration).find(({ name }) => name.text === alias);
  const symbol = declared && checker.getSymbolAtLocation(declared.name);
  if (!symbol) throw new Error(`${path} declares no type ${alias}`);
  visit(checker.getDeclaredTypeOfSymbol(symbol), alias, [], 0);
  return [...found.values()];
}

/** Opens the project in the compiler, hands it over and closes it. */
export function withProject<T>(use: (project: Project) => T): T {
  const api = new API({ cwd: ROOT });
  try {
    const config = resolve(ROOT, "tsconfig.json");
    const project = api.updateSnapshot({ openProjects: [config] }).getProject(config);
    if (!project) throw new Error(`no project ${config}`);
    return use(project);
  } finally {
    api.close();
  }
}
