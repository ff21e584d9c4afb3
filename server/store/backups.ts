import { readdirSync, statSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import type { Backup } from "../../shared/model/api/book.ts";

/** "gripcurve.db.20260301T120000Z-before-empty.bak", as {@link copyBeside} names it. */
const STAMPED = /\.(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})Z-(.+?)(?:-(?:[2-9]|[1-9]\d))?\.bak$/;

function fromName(name: string, changed: Date): Pick<Backup, "at" | "reason"> {
  const [, year, month, day, hour, minute, second, reason] = STAMPED.exec(name) ?? [];
  if (year === undefined) return { at: changed.toISOString(), reason: "" };
  return { at: `${year}-${month}-${day}T${hour}:${minute}:${second}.000Z`, reason };
}

/**
 * The copies that lie beside the data file, the latest first.
 *
 * @param file - the data file
 */
export function listBackups(file: string): Backup[] {
  const folder = dirname(file);
  const start = `${basename(file)}.`;
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.startsWith(start) && entry.name.endsWith(".bak"))
    .map(({ name }) => {
      const { size, mtime } = statSync(join(folder, name));
      return { name, bytes: size, ...fromName(name, mtime) };
    })
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : a.name < b.name ? 1 : -1));
}

/** @returns where a copy of that name lies beside the data file; null where none does */
export function backupPath(file: string, name: string): string | null {
  return listBackups(file).some((backup) => backup.name === name) ? join(dirname(file), name) : null;
}
