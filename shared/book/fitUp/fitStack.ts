import { type Dimension, type Stack, stackOf } from "../../decide/fitUp/stack.ts";
import type { Build } from "../../model/build.ts";
import type { PartDimension, SizeBasis, StackKind, StoredPart, StoredStack } from "../../model/stacks.ts";
import { type Book, findById } from "../book.ts";
import { PART_SIZES, type StackedParts } from "./partSizes.ts";

/** One size of a stack, with where it comes from. */
export interface StackLine {
  readonly name: string;
  /** the size of a part; null: its own */
  readonly of: PartDimension | null;
  readonly basis: SizeBasis;
  readonly quantity: number;
  /** 1: it opens the clearance; −1: it fills it */
  readonly sense: 1 | -1;
  /** [m]; null where the part's record doesn't say */
  readonly nominal: number | null;
  /** half of the range it is made in [m] */
  readonly tolerance: number;
}

/** Parts between two faces of a build's housing. */
export interface FitStack {
  readonly name: string;
  readonly kind: StackKind;
  /** the space first, then the parts in the order in which they stand */
  readonly lines: readonly StackLine[];
  /** null where a size isn't known, or can't be */
  readonly stack: Stack | null;
  /** why there is no answer, in words; null where there is */
  readonly problem: string | null;
}

/** As drawn, printed. Common practice [m]. */
export const DRAWN_TOLERANCE = 0.2e-3;
/** With calipers on a printed face. Common practice [m]. */
export const MEASURED_TOLERANCE = 0.05e-3;

const USUAL: Readonly<Record<SizeBasis, number>> = {
  drawn: DRAWN_TOLERANCE,
  measured: MEASURED_TOLERANCE,
  free: 0,
};

function lineOf(parts: StackedParts, line: StoredPart, sense: 1 | -1): StackLine {
  const { name, of, basis, quantity } = line;
  const nominal = of === undefined ? (line.nominal ?? null) : PART_SIZES[of].of(parts);
  const usual = Math.min(USUAL[basis], nominal ?? Number.POSITIVE_INFINITY);
  return { name, of: of ?? null, basis, quantity, sense, nominal, tolerance: line.tolerance ?? usual };
}

/** Sizes of 0, as of tyres that don't give, are no part of a stack. */
const isThere = ({ nominal }: StackLine): boolean => nominal !== 0;

const isKnown = (line: StackLine): line is StackLine & { readonly nominal: number } => line.nominal !== null;

/** @returns the sizes as {@link stackOf} takes them [m]; null where one isn't known */
export function dimensionsOf(lines: readonly StackLine[]): Dimension[] | null {
  const known = lines.filter(isKnown);
  return known.length < lines.length ? null : known;
}

const missingText = ({ name, of }: StackLine): string =>
  of === null
    ? `“${name}” has no size.`
    : `The record of the ${PART_SIZES[of].part} lacks a size (${PART_SIZES[of].words}).`;

/** A part may be smaller than the tolerance that was typed for another. */
const coarseText = ({ name }: StackLine): string => `“${name}” has a tolerance larger than its size.`;

/** @returns a stack with the sizes of a build's parts, and what it comes to */
export function fitStack(parts: StackedParts, { name, kind, space, parts: filling }: StoredStack): FitStack {
  const lines = [
    lineOf(parts, { ...space, quantity: 1 }, 1),
    ...filling.map((part) => lineOf(parts, part, -1)).filter(isThere),
  ];
  const dimensions = dimensionsOf(lines);
  const missing = lines.filter((line) => !isKnown(line)).map(missingText);
  const coarse = lines.filter((line) => isKnown(line) && line.tolerance > line.nominal).map(coarseText);
  const problem = [...missing, ...coarse].join(" ");
  if (!dimensions || problem !== "") return { name, kind, lines, stack: null, problem };
  return { name, kind, lines, stack: stackOf(dimensions), problem: null };
}

/** @returns the parts of a build whose sizes stand in stacks */
export function stackedParts(book: Book, build: Build): StackedParts {
  return {
    motor: findById(book.motors, build.motor)?.data ?? null,
    rotor: findById(book.rotors, build.rotor)?.data ?? null,
    diameter: build.diameter,
    pack: findById(book.packs, build.pack)?.data ?? null,
    skirt: findById(book.skirts, build.skirt)?.data ?? null,
    gear: findById(book.gears, build.gear)?.data ?? null,
  };
}

/**
 * Whether the parts of a build close in its housing, stack by stack.
 *
 *     sizes of its parts from their records, all others from the stack
 *
 * @param book - of its parts
 * @param build - a stored build, or one with other parts
 * @returns the stacks in the build's order [m]
 *
 * Valid for any build; one without stacks has none. Source: docs/method/fit-up.md, Stack
 */
export function fitStacks(book: Book, build: Build): FitStack[] {
  const parts = stackedParts(book, build);
  return build.stacks.map((stack) => fitStack(parts, stack));
}
