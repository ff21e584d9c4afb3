import type { Config } from "./config.ts";

/** What stands in the way of the port, by the system's code: what is so, and what to do. */
const LISTENING: Readonly<Record<string, (config: Config) => string>> = {
  EADDRINUSE: ({ port, host }) =>
    `Port ${port} of ${host} is taken, perhaps by a Gripcurve that already runs. End that one, or take another port: PORT=${port + 1}.`,
  EACCES: ({ port }) =>
    `Port ${port} is not open to this account. Take one above 1023, for example PORT=4310.`,
  EADDRNOTAVAIL: ({ host }) =>
    `HOST is ${host}, which is no address of this machine. Leave it unset to serve this machine alone.`,
  ENOTFOUND: ({ host }) =>
    `HOST is ${host}, a name that nothing answers to. Leave it unset to serve this machine alone.`,
};

const ELSEWHERE = "or name a file elsewhere with GRIPCURVE_DB";

/** What stands in the way of the data file, by the code of SQLite or of the system. */
const OPENING: Readonly<Record<string, string>> = {
  SQLITE_BUSY: "is held by another program. Close that one, then start again",
  SQLITE_CANTOPEN: `can't be opened. Check that this account may read and write it and its folder, ${ELSEWHERE}`,
  SQLITE_READONLY: `is read-only, or its folder is. Allow this account to write there, ${ELSEWHERE}`,
  SQLITE_FULL: `found no room: the disk is full. Free some space, ${ELSEWHERE}`,
  SQLITE_CORRUPT: `is damaged. It was left as it is: put a backup in its place, ${ELSEWHERE}`,
  SQLITE_NOTADB: `is no SQLite database. It was left as it is: put a backup in its place, ${ELSEWHERE}`,
  SQLITE_IOERR: `can't be read or written: the disk reports an error. Check the disk, ${ELSEWHERE}`,
  EACCES: `lies where this account may not read or write. Allow it, ${ELSEWHERE}`,
  EPERM: `lies where this account may not read or write. Allow it, ${ELSEWHERE}`,
  EROFS: `lies on a disk that is read-only. Make it writable, ${ELSEWHERE}`,
  ENOSPC: `found no room: the disk is full. Free some space, ${ELSEWHERE}`,
  ENOTDIR: `can't lie there: a part of its path is a file, no folder. Name another with GRIPCURVE_DB`,
  EEXIST: `can't lie there: a part of its path is a file, no folder. Name another with GRIPCURVE_DB`,
};

interface SystemError extends Error {
  readonly code: string;
  readonly syscall?: string;
  readonly port?: number;
}

const isSystemError = (error: unknown): error is SystemError =>
  error instanceof Error && "code" in error && typeof error.code === "string";

/** The local network's port, by the code of the system. */
const ON_NETWORK: Readonly<Record<string, (port: number) => string>> = {
  EADDRINUSE: (port) =>
    `Port ${port}, on which --lan serves the local network, is taken, perhaps by a Gripcurve that already runs. End that one, or take another port: GRIPCURVE_LAN_PORT=${port + 1}.`,
  EACCES: (port) =>
    `Port ${port}, on which --lan serves the local network, is not open to this account. Take one above 1023, for example GRIPCURVE_LAN_PORT=4311.`,
};

const OF_LISTENING = new Set(["listen", "bind", "getaddrinfo"]);

/** @returns why the server didn't start, in words that name the file or the port and say what to do */
export function wordsOf(error: unknown, config?: Config): string {
  if (!config || !isSystemError(error)) return error instanceof Error ? error.message : String(error);
  if (OF_LISTENING.has(error.syscall ?? "")) {
    const { code, port } = error;
    const onNetwork = port !== undefined && port === config.lanPort ? ON_NETWORK[code]?.(port) : undefined;
    return onNetwork ?? LISTENING[code]?.(config) ?? error.message;
  }
  const primary = error.code.startsWith("SQLITE_") ? error.code.split("_").slice(0, 2).join("_") : error.code;
  const opening = OPENING[primary];
  return opening ? `The data file ${config.file} ${opening}.` : error.message;
}
