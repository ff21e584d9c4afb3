import { resolve } from "node:path";

export interface Config {
  readonly port: number;
  readonly host: string;
  /** data file */
  readonly file: string;
}

const DEFAULT_PORT = 4310;
const GREATEST_PORT = 65_535;

/** @throws {RangeError} on a PORT that is none */
export function configFrom(environment: Readonly<Record<string, string | undefined>>): Config {
  // Set to nothing counts as not set.
  const PORT = environment.PORT || String(DEFAULT_PORT);
  const HOST = environment.HOST || "127.0.0.1";
  const GRIPCURVE_DB = environment.GRIPCURVE_DB || "data/gripcurve.db";
  const port = /^\d+$/.test(PORT) ? Number(PORT) : Number.NaN;
  if (!(Number.isInteger(port) && port >= 0 && port <= GREATEST_PORT)) {
    throw new RangeError(
      `PORT is "${PORT}"; allowed: a whole number from 0 to ${GREATEST_PORT}, for example 4310.`,
    );
  }
  return { port, host: HOST, file: resolve(GRIPCURVE_DB) };
}
