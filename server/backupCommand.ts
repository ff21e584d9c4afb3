import { existsSync, statSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import SQLite from "better-sqlite3";
import type { Config } from "./config.ts";
import { wordsOf } from "./startError.ts";
import { copyBeside, copyTo } from "./store/copies.ts";
import { requireBook } from "./store/dataFile.ts";

const USAGE = "Usage: npm run backup [-- FILE]; without FILE the copy is put beside the data file.\n";

interface Surroundings {
  readonly config: () => Config;
  readonly clock: () => Date;
  readonly out: (text: string) => void;
  readonly complain: (text: string) => void;
}

/** @throws {Error} where the name is taken */
function made(file: string, target: string | undefined, at: Date): string {
  if (target === undefined) return join(dirname(file), copyBeside(file, "by-hand", at));
  const path = resolve(target);
  if (existsSync(path) || !copyTo(file, path))
    throw new Error(`${path} is there already. Name a new file; nothing is overwritten.`);
  return path;
}

/** @throws {Error} where what was written can't be read back whole */
function requireReadBack(copy: string): void {
  const database = new SQLite(copy, { readonly: true });
  try {
    const found = database.pragma("integrity_check(1)", { simple: true });
    if (found !== "ok") throw new Error(`${copy} can't be read back: ${String(found)}. Try another disk.`);
  } finally {
    database.close();
  }
}

/**
 * `npm run backup`: copies the data file, whether a server runs on it or not, and reads the copy back.
 *
 * @returns the program's exit code
 */
export function backupCommand(
  args: readonly string[],
  { config, clock, out, complain }: Surroundings,
): number {
  if (args.length > 1 || args[0]?.startsWith("-")) {
    complain(USAGE);
    return 2;
  }
  let known: Config | undefined;
  try {
    known = config();
    const { file } = known;
    if (!existsSync(file)) throw new Error(`There is no data file ${file}. Name yours with GRIPCURVE_DB.`);
    requireBook(file);
    const copy = made(file, args[0], clock());
    requireReadBack(copy);
    out(`${copy} (${statSync(copy).size} bytes)\n`);
    return 0;
  } catch (error) {
    complain(`${wordsOf(error, known)}\n`);
    return 1;
  }
}
