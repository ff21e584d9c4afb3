import type { Book } from "../../../shared/book/book.ts";
import { buildOfSet } from "../../../shared/book/choose/openedSet.ts";
import type { Build } from "../../../shared/model/build.ts";
import { addRecord } from "../../state/write.ts";
import type { Combination } from "./answers.ts";
import { sizeText } from "./words/set.ts";

const MOST_LETTERS = 120;

/** Builds that sets were stored as in this tab, so that none is stored twice. */
const stored = new Map<string, string>();

/** @returns a set as a build of its own, to be looked at; named after the build that gave the rest */
export function buildFor(book: Book, base: Build, set: Combination): Build {
  const build = buildOfSet(book, base, { ...set, mass: set.values.mass });
  const ending = `, chosen ${sizeText(set.diameter)}`;
  return { ...build, name: `${base.name.slice(0, MOST_LETTERS - ending.length)}${ending}` };
}

/** Stores a set as a build, once. @returns the build's identifier @throws {ApiError} */
export async function storeSet(
  book: Book,
  base: Build,
  job: string,
  set: Combination,
  name?: string,
): Promise<string> {
  const key = `${job} ${set.index}`;
  const known = stored.get(key);
  if (known && book.builds.some(({ id }) => id === known)) return known;
  const build = buildFor(book, base, set);
  const record = await addRecord<Build>("builds", {
    ...build,
    name: (name ?? build.name).slice(0, MOST_LETTERS),
  });
  stored.set(key, record.id);
  return record.id;
}
