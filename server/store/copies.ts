import { rmSync } from "node:fs";
import { basename } from "node:path";
import type { Database } from "./database.ts";
import { placeNew, UNFINISHED } from "./placing.ts";

const TIME_MARKS = /[-:]|\.\d+/g;

/**
 * Copies the database to a file beside it, consistent while others read and write. The copy has its name only once it is whole and on the disk.
 *
 * @param reason - ends the copy's name, for example "before-002"
 * @returns the copy's name, without its folder
 */
export function copyBeside(database: Database, reason: string, at: Date): string {
  const stamp = at.toISOString().replace(TIME_MARKS, "");
  const stem = `${database.name}.${stamp}-${reason}`;
  const unfinished = `${stem}.${process.pid}${UNFINISHED}`;
  rmSync(unfinished, { force: true });
  try {
    database.prepare("VACUUM INTO ?").run(unfinished);
    return basename(placedUnderFreeName(unfinished, stem));
  } finally {
    rmSync(unfinished, { force: true });
  }
}

function placedUnderFreeName(unfinished: string, stem: string): string {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? `${stem}.bak` : `${stem}-${number}.bak`;
    if (placeNew(unfinished, name)) return name;
  }
}
