import type { Build } from "../model/build.ts";
import type { Book } from "./book.ts";
import { withPlate } from "./newestFirst.ts";
import { testsAmong } from "./testsAsked.ts";
import { partsAsked, testsOfRigs } from "./testsOfRigs.ts";

/**
 * The part of a book that a build's numbers and uncertainties can rest on: a book of thousands of tests becomes light to hand on.
 *
 *     {@link testsOfRigs}, and the newest test with a bleed plate: a next test would be made with it
 *
 * @param book - the whole bench book, or as much of it as the build's numbers can rest on
 * @param build - a stored build, or one changed by what-if handles
 * @returns a book without builds, in the same order, that answers every question about that build as the whole one does
 *
 * Valid for the build itself, not for another on the same parts. Source: what {@link resolveBuild} and {@link buildUncertainty} read
 */
export function bookOfBuild(book: Book, build: Build): Book {
  const data = book.tests.map((test) => test.data);
  const { rotors, motors, packs } = partsAsked([build], data);
  const own = new Set(testsAmong(book.tests, testsOfRigs([build], data)).map(({ id }) => id));
  const plate = withPlate(book.tests)[0]?.id;
  return {
    ...book,
    rotors: book.rotors.filter(({ id }) => rotors.has(id)),
    motors: book.motors.filter(({ id }) => motors.has(id)),
    packs: book.packs.filter(({ id }) => packs.has(id)),
    tests: book.tests.filter(({ id }) => id === plate || own.has(id)),
    builds: [],
    known: undefined,
  };
}

/**
 * The part of a book that the numbers of several builds can rest on.
 *
 *     what {@link bookOfBuild} keeps for any of them, in the book's order
 *
 * @param book - the whole bench book
 * @param builds - each answered as by the whole book
 * @returns a book without builds
 */
export function bookOfBuilds(book: Book, builds: readonly Build[]): Book {
  const each = builds.map((build) => bookOfBuild(book, build));
  const union = <C extends "rotors" | "motors" | "packs" | "tests">(name: C): Book[C] => {
    const kept = new Set(each.flatMap((part) => part[name].map(({ id }) => id)));
    const records: readonly { readonly id: string }[] = book[name];
    return records.filter(({ id }) => kept.has(id)) as unknown as Book[C];
  };
  return {
    ...book,
    rotors: union("rotors"),
    motors: union("motors"),
    packs: union("packs"),
    tests: union("tests"),
    builds: [],
  };
}
