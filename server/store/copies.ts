import { rmSync } from "node:fs";
import { basename } from "node:path";
import SQLite from "better-sqlite3";
import { placeNew, UNFINISHED } from "./placing.ts";

const TIME_MARKS = /[-:]|\.\d+/g;

/**
 * Copies a book to another file, through a connection of its own that only reads: consistent while others read and
 * write, and while its caller holds them off. The copy has a name only once it is whole and on the disk.
 *
 * @param place - gives the whole copy its name, from the one that it was written under
 */
function copied<T>(file: string, unfinished: string, place: () => T): T {
  rmSync(unfinished, { force: true });
  const database = new SQLite(file, { readonly: true, fileMustExist: true });
  try {
    database.prepare("VACUUM INTO ?").run(unfinished);
    return place();
  } finally {
    database.close();
    rmSync(unfinished, { force: true });
  }
}

/**
 * Copies the book to a file beside it, under its moment and the reason.
 *
 * @param reason - ends the copy's name, for example "before-002"
 * @returns the copy's name, without its folder
 */
export function copyBeside(file: string, reason: string, at: Date): string {
  const stem = `${file}.${at.toISOString().replace(TIME_MARKS, "")}-${reason}`;
  const unfinished = `${stem}.${process.pid}${UNFINISHED}`;
  return copied(file, unfinished, () => basename(placedUnderFreeName(unfinished, stem)));
}

/** Copies the book to a file of a name that is free. @returns false where it is taken */
export function copyTo(file: string, target: string): boolean {
  const unfinished = `${target}.${process.pid}${UNFINISHED}`;
  return copied(file, unfinished, () => placeNew(unfinished, target));
}

function placedUnderFreeName(unfinished: string, stem: string): string {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? `${stem}.bak` : `${stem}-${number}.bak`;
    if (placeNew(unfinished, name)) return name;
  }
}
