import SQLite from "better-sqlite3";

/** Why a disk didn't take what was to be stored. */
export type DiskTrouble = "disk-full" | "read-only";

const TROUBLES: Readonly<Record<string, DiskTrouble>> = {
  SQLITE_FULL: "disk-full",
  ENOSPC: "disk-full",
  EDQUOT: "disk-full",
  SQLITE_READONLY: "read-only",
  EROFS: "read-only",
};

/** @returns what the disk refused, by the code of SQLite or of the system; null on any other error */
export function diskTroubleOf(error: unknown): DiskTrouble | null {
  if (!(error instanceof Error && "code" in error)) return null;
  const code = String(error.code);
  const primary = error instanceof SQLite.SqliteError ? code.split("_").slice(0, 2).join("_") : code;
  return TROUBLES[primary] ?? null;
}
