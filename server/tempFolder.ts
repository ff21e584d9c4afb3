import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";

/** What a folder is for: a body on its way in, a copy on its way out, one to look into, one to be restored. */
export type TempKind = "body" | "backup" | "look" | "restore";

/** Folders for files that pass through may be shared by several machines, or by what takes itself for one. */
const machine = (): string => hostname().replace(/[^\w.]/g, "_");

const NAME = /^gripcurve-(?:body|backup|look|restore)-(.+)-(\d+)-[^-]+$/;

/** @returns a new folder that names its process; who asks for it removes it */
export const tempFolder = (kind: TempKind, within = tmpdir()): string =>
  mkdtempSync(join(within, `gripcurve-${kind}-${machine()}-${process.pid}-`));

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Any other refusal is of a process that is there.
    return !(error instanceof Error && "code" in error && error.code === "ESRCH");
  }
}

/** A folder that isn't there, or that isn't ours to read, holds up no start. */
function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/**
 * Removes the folders of processes that were killed before they could; to be called before this one makes any: one
 * that bears its number is of a process that had it before. Those of other machines stay: who lives there isn't seen from here.
 */
export function removeLeftFolders(within = tmpdir()): void {
  for (const name of namesIn(within)) {
    const [, of, pid] = NAME.exec(name) ?? [];
    if (of !== machine() || (Number(pid) !== process.pid && isAlive(Number(pid)))) continue;
    try {
      rmSync(join(within, name), { recursive: true, force: true });
    } catch {
      // Another user's: theirs to remove.
    }
  }
}
