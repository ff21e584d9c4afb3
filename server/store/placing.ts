import { closeSync, existsSync, fsyncSync, linkSync, openSync, renameSync, rmSync } from "node:fs";
import { dirname } from "node:path";

/** Ends the name of a file that isn't whole yet; nothing takes such a file for a book or a copy. */
export const UNFINISHED = ".part";

/** Puts what was written to a file, and then its name, on the disk. */
export function flush(file: string): void {
  const descriptor = openSync(file, "r+");
  fsyncSync(descriptor);
  closeSync(descriptor);
}

/** A folder can't be opened on every system; where it can, a new name in it outlives a power cut. */
function flushFolder(folder: string): void {
  if (process.platform === "win32") return;
  const descriptor = openSync(folder, "r");
  fsyncSync(descriptor);
  closeSync(descriptor);
}

const codeOf = (error: unknown): unknown =>
  error instanceof Error && "code" in error ? error.code : undefined;

/** File systems without hard links, such as those of memory cards, answer with one of these. */
const NO_LINKS = new Set<unknown>(["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS"]);

/**
 * Gives a whole file its final name in one step, and never takes a name that something else has.
 *
 * @returns false where the name is taken; the file is then as it was
 */
export function placeNew(unfinished: string, file: string): boolean {
  flush(unfinished);
  try {
    linkSync(unfinished, file);
    rmSync(unfinished);
  } catch (error) {
    if (codeOf(error) === "EEXIST") return false;
    if (!NO_LINKS.has(codeOf(error))) throw error;
    if (existsSync(file)) return false;
    renameSync(unfinished, file);
  }
  flushFolder(dirname(file));
  return true;
}
