import type { Build } from "../../model/build.ts";
import type { LedgerLine } from "../../model/ledger.ts";
import type { MassGroup } from "../../model/massGroups.ts";
import { type Book, findById } from "../book.ts";
import { nearestSize } from "../rotorSize.ts";
import { madeMass } from "./made.ts";

/** How a mass is known. */
export type MassBasis = "weighed" | "estimated" | "missing";

/** One line of a build's masses. */
export interface MassLine {
  readonly name: string;
  readonly group: MassGroup;
  /** pieces [-] */
  readonly quantity: number;
  /** of one piece; 0 where it is missing [kg] */
  readonly mass: number;
  /** standard, of one piece's mass [kg] */
  readonly uncertainty: number;
  readonly basis: MassBasis;
  /** what it is: a part of the book, or the place of a line of the build's own ledger */
  readonly of: PartLine | number;
}

export type PartLine = "rotor" | "motor" | "pack" | "skirt";

/** What a build weighs, line by line and as a whole. */
export interface Ledger {
  readonly lines: readonly MassLine[];
  /** of the lines, with its standard uncertainty [kg] */
  readonly sum: MassFigure;
  /** the number typed for everything on board; null: none */
  readonly whole: MassFigure | null;
  /** what counts: the whole where there is one, else the sum [kg] */
  readonly mass: MassFigure;
  /** whole less sum; null without a whole [kg] */
  readonly unaccounted: number | null;
}

/** A mass and its standard uncertainty [kg]. */
export interface MassFigure {
  readonly value: number;
  readonly uncertainty: number;
}

/** Of an estimate without an uncertainty of its own [-]. Common practice, no source. */
const ESTIMATED = 0.15;

/** What a part's record says of its figures. */
interface Stated {
  readonly estimated: readonly string[];
  readonly uncertainty: Readonly<Record<string, number>>;
}

interface PartMass {
  readonly mass: number | undefined;
  readonly stated: Stated;
  /** where its record keeps the mass */
  readonly path: string;
}

const uncertaintyOf = (mass: number, basis: MassBasis, stated: number | undefined): number =>
  stated ?? (basis === "estimated" ? ESTIMATED * mass : 0);

function partLine(of: PartLine, name: string, { mass, stated, path }: PartMass): MassLine {
  const group = of === "pack" ? "pack" : "suction";
  const line = { name, group, quantity: 1, of } as const;
  if (mass === undefined) return { ...line, mass: 0, uncertainty: 0, basis: "missing" };
  const basis = stated.estimated.some((each) => path.startsWith(each)) ? "estimated" : "weighed";
  return { ...line, mass, uncertainty: uncertaintyOf(mass, basis, stated.uncertainty[path]), basis };
}

/** A rotor's nearest size, carried to the diameter with its cube: weighed at another size it is an estimate here. */
function rotorLine(book: Book, build: Build): MassLine | null {
  const rotor = findById(book.rotors, build.rotor)?.data;
  if (!rotor) return null;
  const size = nearestSize(rotor, build.diameter);
  const path = `sizes.${rotor.sizes.indexOf(size)}.mass`;
  const scale = (build.diameter / size.diameter) ** 3;
  const line = partLine("rotor", rotor.name, { mass: size.mass, stated: rotor, path });
  const carried = { ...line, mass: line.mass * scale, uncertainty: line.uncertainty * scale };
  if (scale === 1 || line.basis === "missing") return carried;
  return {
    ...carried,
    basis: "estimated",
    uncertainty: Math.hypot(carried.uncertainty, ESTIMATED * Math.abs(carried.mass - line.mass)),
  };
}

function partLines(book: Book, build: Build): MassLine[] {
  const part = (of: "motor" | "pack" | "skirt"): MassLine[] => {
    const list: readonly { readonly id: string; readonly data: Stated & { name: string; mass?: number } }[] =
      book[`${of}s`];
    const data = findById(list, build[of])?.data;
    return data ? [partLine(of, data.name, { mass: data.mass, stated: data, path: "mass" })] : [];
  };
  const rotor = rotorLine(book, build);
  return [...(rotor ? [rotor] : []), ...part("motor"), ...part("skirt"), ...part("pack")];
}

/** A mass that is typed, else that of the drawing: never more than an estimate. */
function ownLine(line: LedgerLine, of: number): MassLine {
  const { name, group, quantity, mass, uncertainty, basis, made } = line;
  const common = { name, group, quantity, of };
  if (mass !== undefined)
    return { ...common, mass, uncertainty: uncertaintyOf(mass, basis, uncertainty), basis };
  const drawn = made ? madeMass(made) : { mass: 0, uncertainty: 0 };
  return {
    ...common,
    mass: drawn.mass,
    uncertainty: uncertainty ?? drawn.uncertainty,
    basis: made ? "estimated" : "missing",
  };
}

/** @returns what a piece of a line weighs, typed or by its drawing [kg] */
export const pieceMass = (line: LedgerLine): number => ownLine(line, 0).mass;

/** @returns the mass of all lines, and its standard uncertainty: pieces of a line share one error [kg] */
export function sumOf(lines: readonly Pick<MassLine, "quantity" | "mass" | "uncertainty">[]): MassFigure {
  return {
    value: lines.reduce((sum, { quantity, mass }) => sum + quantity * mass, 0),
    uncertainty: Math.hypot(...lines.map(({ quantity, uncertainty }) => quantity * uncertainty)),
  };
}

/**
 * What a build weighs: its parts as lines by themselves, the lines of its own ledger, and the whole where it was weighed as one.
 *
 *     m = whole, else Σ q·m;  u = √Σ(q·u)²;  unaccounted = whole − Σ q·m
 *
 * @param book - of its parts
 * @param build - a stored build, or one changed by what-if settings
 * @returns lines and sums [kg]; a part that isn't weighed counts as nothing and is named "missing"
 *
 * Valid for parts of the book that are on board once. Source: docs/method/mass.md, Ledger
 */
export function ledgerOf(book: Book, build: Build): Ledger {
  const lines = [...partLines(book, build), ...build.ledger.map(ownLine)];
  const sum = sumOf(lines);
  const { mass } = build.vehicle;
  const whole =
    mass === undefined ? null : { value: mass, uncertainty: build.uncertainty["vehicle.mass"] ?? 0 };
  return {
    lines,
    sum,
    whole,
    mass: whole ?? sum,
    unaccounted: whole && whole.value - sum.value,
  };
}
