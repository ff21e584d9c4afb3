import type { Build } from "../../model/build.ts";
import type { Book } from "../book.ts";
import { fitStack, type StackLine, stackedParts } from "./fitStack.ts";
import { PART_SIZES, type StackedPart, type StackedParts } from "./partSizes.ts";

/** What a size adds to the lower worst case [m]; null where it isn't known. */
const lowOf = ({ nominal, sense, quantity, tolerance }: StackLine): number | null =>
  nominal === null ? null : sense * quantity * nominal - quantity * tolerance;

const isOf = ({ of }: StackLine, part: StackedPart): boolean => of !== null && PART_SIZES[of].part === part;

/** Null as soon as one size isn't known. */
const summed = (lows: readonly (number | null)[]): number | null =>
  lows.reduce<number | null>((sum, low) => (sum === null || low === null ? null : sum + low), 0);

/**
 * What one part adds to the lower worst case of each stack of a build.
 *
 *     Σ over its sizes of s·q·L − q·t
 *
 * @param build - whose stacks they are
 * @param part - which part of it
 * @param parts - the build's parts, that one exchanged
 * @returns by stack [m]; null where its record lacks the size
 *
 * Valid for any part. Source: docs/method/fit-up.md, Stack
 */
export function stackedBy(
  { stacks }: Build,
  part: StackedPart,
  parts: StackedParts,
): readonly (number | null)[] {
  return stacks.map((stack) =>
    summed(
      fitStack(parts, stack)
        .lines.filter((line) => isOf(line, part))
        .map(lowOf),
    ),
  );
}

/** Parts that a search tries: what they add is theirs, not the housing's. */
const TRIED: readonly StackedPart[] = ["motor", "rotor", "pack", "skirt"];

/** @returns the lower worst case of each stack without the parts that a search tries [m]; NaN where a size isn't known */
export function housingOf(book: Book, build: Build): number[] {
  const parts = stackedParts(book, build);
  return build.stacks.map((stack) => {
    const own = fitStack(parts, stack).lines.filter((line) => !TRIED.some((part) => isOf(line, part)));
    return summed(own.map(lowOf)) ?? Number.NaN;
  });
}
