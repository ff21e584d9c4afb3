import { createServer, type Server } from "node:https";
import type { AddressInfo } from "node:net";
import { certificateFor } from "./certificate.ts";
import { addressesOf, type Lan } from "./lan.ts";
import { networkNames } from "./names.ts";

/** All of this machine's IPv4 addresses. */
export const ANY_ADDRESS = "0.0.0.0";

export interface LanServer {
  readonly lan: Lan;
  /** TLS 1.2 or later; it listens to nothing and answers nothing yet */
  readonly server: Server;
}

/**
 * Gets ready to serve the local network: what this machine is called there, and the certificate that holds these names.
 *
 * @param file - the data file, beside which the certificate lies
 * @param given - names that it is to be asked by, besides its own
 */
export async function lanServer(file: string, given: readonly string[], at: Date): Promise<LanServer> {
  const names = networkNames(given);
  const { cert, key, fingerprint } = await certificateFor(file, [...names, "localhost", "127.0.0.1"], at);
  const server = createServer({ cert, key, minVersion: "TLSv1.2" });
  const lan: Lan = {
    names,
    fingerprint,
    get port() {
      return (server.address() as AddressInfo).port;
    },
  };
  return { lan, server };
}

/** @returns what the start says of the local network; nothing of it is secret */
export function lanInWords(lan: Lan): string {
  const [first, ...others] = addressesOf(lan);
  const also = others.length > 0 ? ` (also ${others.join(", ")})` : "";
  return `On the local network: ${first ?? "no address found; connect to one and start again"}${also}, for paired devices alone. Pair them on this machine: Bench, Devices.
The certificate's SHA-256 fingerprint: ${lan.fingerprint}`;
}
