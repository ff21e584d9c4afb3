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
  /** port on which the local network is served; null where it isn't */
  readonly lanPort: number | null;
}

const DEFAULT_PORT = 4310;
const GREATEST_PORT = 65_535;
const NAME = /^(?:\[[0-9a-f:.]+\]|[0-9a-f:.]+|[a-z0-9._-]+)$/;

function portFrom(text: string, setting = "PORT"): number {
  const port = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (Number.isInteger(port) && port >= 0 && port <= GREATEST_PORT) return port;
  throw new RangeError(
    `${setting} is "${text}"; allowed: a whole number from 0 to ${GREATEST_PORT}, for example 4310.`,
  );
}

/** Beside the port of this machine, unless it is set; any that is free where that is. */
function lanPortFrom(text: string, port: number): number {
  if (text !== "") return portFrom(text, "GRIPCURVE_LAN_PORT");
  if (port === 0) return 0;
  return port < GREATEST_PORT ? port + 1 : port - 1;
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

/** Whether only this machine reaches an address. */
export const isThisMachine = (host: string): boolean => /^(?:localhost|127\.\d+\.\d+\.\d+|::1)$/i.test(host);

const LAN = "--lan";

/** @returns whether the local network is to be served */
function servesLan(args: readonly string[], host: string): boolean {
  const unknown = args.find((each) => each !== LAN);
  if (unknown !== undefined) throw new RangeError(`"${unknown}" is not known; allowed: ${LAN}, or nothing.`);
  if (args.length > 0 && !isThisMachine(host))
    throw new RangeError(
      `HOST is ${host}, which lets the network in without pairing and without TLS; ${LAN} asks for both. Leave HOST unset.`,
    );
  return args.length > 0;
}

/**
 * @param args - what stands behind the command
 * @throws {RangeError} on a port or GRIPCURVE_COPIES that is none, on GRIPCURVE_HOSTS or GRIPCURVE_LOG that say what can't be, on anything but --lan, and on that with HOST
 */
export function configFrom(
  environment: Readonly<Record<string, string | undefined>>,
  args: readonly string[] = [],
): Config {
  // Set to nothing counts as not set.
  const host = environment.HOST || "127.0.0.1";
  const port = portFrom(environment.PORT || String(DEFAULT_PORT));
  const lanPort = lanPortFrom(environment.GRIPCURVE_LAN_PORT ?? "", port);
  return {
    port,
    host,
    names: [host.toLowerCase(), ...namesFrom(environment.GRIPCURVE_HOSTS ?? "")],
    file: resolve(environment.GRIPCURVE_DB || "data/gripcurve.db"),
    logsRequests: logsRequestsFrom(environment.GRIPCURVE_LOG ?? ""),
    dailyCopies: copiesFrom(environment.GRIPCURVE_COPIES || String(USUAL_COPIES)),
    lanPort: servesLan(args, host) ? lanPort : null,
  };
}

/** @returns what listening on an address opens beyond this machine, in words; null where it opens nothing */
export function exposureOf({ host }: Config): string | null {
  if (isThisMachine(host)) return null;
  return `HOST is ${host}: whoever reaches this machine over the network can read, change and empty the bench book. There is no password, and nothing is encrypted. Leave HOST unset to serve this machine alone, or let paired devices in with npm start -- --lan. Names to be asked by go into GRIPCURVE_HOSTS.`;
}
