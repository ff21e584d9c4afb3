import type { Book } from "../../../shared/book/book.ts";
import { buildOfCombination } from "../../../shared/book/choose/openedCombination.ts";
import type { Build } from "../../../shared/model/build.ts";
import { addRecord } from "../../state/write.ts";
import type { Combination } from "./answers.ts";
import { sizeText } from "./words/combination.ts";

const MOST_LETTERS = 120;

/** Builds that combinations were stored as in this tab, so that none is stored twice. */
const stored = new Map<string, string>();

/** @returns a combination as a build of its own, to be looked at; named after the build that gave the rest */
export function buildFor(book: Book, base: Build, combination: Combination): Build {
  const build = buildOfCombination(book, base, { ...combination, mass: combination.values.mass });
  const ending = `, chosen ${sizeText(combination.diameter)}`;
  return { ...build, name: `${base.name.slice(0, MOST_LETTERS - ending.length)}${ending}` };
}

/** Stores a combination as a build, once. @returns the build's identifier @throws {ApiError} */
export async function storeCombination(
  book: Book,
  base: Build,
  job: string,
  combination: Combination,
  name?: string,
): Promise<string> {
  const key = `${job} ${combination.index}`;
  const known = stored.get(key);
  if (known && book.builds.some(({ id }) => id === known)) return known;
  const build = buildFor(book, base, combination);
  const record = await addRecord<Build>("builds", {
    ...build,
    name: (name ?? build.name).slice(0, MOST_LETTERS),
  });
  stored.set(key, record.id);
  return record.id;
}
