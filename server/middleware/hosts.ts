import type { Request, RequestHandler } from "express";
import { Refusal } from "../refusal.ts";
import { isOverNetwork } from "./pairedOnly.ts";

/** How this machine calls itself. */
const LOOPBACK = ["127.0.0.1", "localhost", "::1"];
const HOST_HEADER = /^(?:\[([0-9a-f:.]+)\]|([a-z0-9._-]+))(?::\d*)?$/;

/** @returns the host that a Host header names, without port and brackets; null where it names none */
function hostOf(header: string | undefined): string | null {
  const match = HOST_HEADER.exec(header?.toLowerCase() ?? "");
  return match ? (match[1] ?? match[2]) : null;
}

/** @returns the address of this machine on which the connection came in */
const arrivedAt = ({ socket }: Request): string | undefined =>
  socket.localAddress?.replace(/^::ffff:/, "").replace(/%.*$/, "");

/**
 * Refuses requests that name another host: a page elsewhere can let its own name lead here (DNS rebinding), and the
 * browser then takes this server for that page's own. Whoever names the address on which the connection came in knows it.
 *
 * @param names - allowed besides this machine's own, without ports and brackets, in lower case
 * @param onNetwork - allowed over the local network alone: whoever is on it could claim such a name
 */
export function refuseOtherHosts(names: readonly string[], onNetwork: readonly string[]): RequestHandler {
  const ours = new Set([...LOOPBACK, ...names]);
  const overNetwork = new Set([...ours, ...onNetwork]);
  return (request, _response, next) => {
    const host = hostOf(request.get("host"));
    const known = isOverNetwork(request) ? overNetwork : ours;
    if (host !== null && (known.has(host) || host === arrivedAt(request))) {
      next();
      return;
    }
    const named = JSON.stringify(request.get("host") ?? "");
    const message = `This server is not ${named}. Open it as 127.0.0.1, or allow the name by GRIPCURVE_HOSTS when it starts.`;
    throw new Refusal(421, "other-host", message);
  };
}
