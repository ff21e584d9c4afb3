import { resolve } from "node:path";

export interface Config {
  readonly port: number;
  readonly host: string;
  /** names and addresses by which it may be asked, besides this machine's own */
  readonly names: readonly string[];
  /** data file */
  readonly file: string;
  /** whether each request is written to the log */
  readonly logsRequests: boolean;
  /** how many daily copies are kept; 0: none is made */
  readonly dailyCopies: number;
}

const DEFAULT_PORT = 4310;
const GREATEST_PORT = 65_535;
const NAME = /^(?:\[[0-9a-f:.]+\]|[0-9a-f:.]+|[a-z0-9._-]+)$/;

function portFrom(text: string): number {
  const port = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (Number.isInteger(port) && port >= 0 && port <= GREATEST_PORT) return port;
  throw new RangeError(
    `PORT is "${text}"; allowed: a whole number from 0 to ${GREATEST_PORT}, for example 4310.`,
  );
}

function namesFrom(text: string): string[] {
  const names = text.toLowerCase().split(",");
  const plain = names.map((name) => name.trim()).filter((name) => name !== "");
  const wrong = plain.find((name) => !NAME.test(name));
  if (wrong === undefined) return plain.map((name) => name.replace(/^\[|\]$/g, ""));
  throw new RangeError(
    `GRIPCURVE_HOSTS holds "${wrong}"; allowed: names and addresses without ports, for example bench.local,192.168.1.20.`,
  );
}

function logsRequestsFrom(text: string): boolean {
  if (text === "" || text === "requests") return text === "requests";
  throw new RangeError(`GRIPCURVE_LOG is "${text}"; allowed: requests, or nothing.`);
}

const USUAL_COPIES = 7;
const MOST_COPIES = 366;

function copiesFrom(text: string): number {
  const count = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (count <= MOST_COPIES) return count;
  throw new RangeError(
    `GRIPCURVE_COPIES is "${text}"; allowed: how many daily copies are kept, from 0 (none is made) to ${MOST_COPIES}.`,
  );
}

/** @throws {RangeError} on a PORT or GRIPCURVE_COPIES that is none, on GRIPCURVE_HOSTS or GRIPCURVE_LOG that say what can't be */
export function configFrom(environment: Readonly<Record<string, string | undefined>>): Config {
  // Set to nothing counts as not set.
  const host = environment.HOST || "127.0.0.1";
  return {
    port: portFrom(environment.PORT || String(DEFAULT_PORT)),
    host,
    names: [host.toLowerCase(), ...namesFrom(environment.GRIPCURVE_HOSTS ?? "")],
    file: resolve(environment.GRIPCURVE_DB || "data/gripcurve.db"),
    logsRequests: logsRequestsFrom(environment.GRIPCURVE_LOG ?? ""),
    dailyCopies: copiesFrom(environment.GRIPCURVE_COPIES || String(USUAL_COPIES)),
  };
}

const THIS_MACHINE = /^(?:localhost|127\.\d+\.\d+\.\d+|::1)$/i;

/** @returns what listening on an address opens beyond this machine, in words; null where it opens nothing */
export function exposureOf({ host }: Config): string | null {
  if (THIS_MACHINE.test(host)) return null;
  return `HOST is ${host}: whoever reaches this machine over the network can read, change and empty the bench book. There is no password, and nothing is encrypted. Leave HOST unset to serve this machine alone. Names to be asked by go into GRIPCURVE_HOSTS.`;
}
