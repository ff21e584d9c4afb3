import type { Request, RequestHandler } from "express";
import type { Visitors } from "../lan/visitors.ts";
import { Refusal } from "../refusal.ts";

/** Whether a request came over the local network: only there TLS is spoken, and on every address of it, this machine's own included. */
export const isOverNetwork = (request: Request): boolean => request.secure;

/** Where a device is paired. */
export const PAIRING_PAGE = "/pair";
const READS = new Set(["GET", "HEAD"]);

/** The page that pairs, its scripts and styles, and what it sends; and the icons, which a home screen fetches without the cookie. */
const isForStrangers = ({ method, path }: Request, api: string): boolean =>
  READS.has(method)
    ? path === PAIRING_PAGE || /^\/(?:assets|icons)\//.test(path)
    : method === "POST" && path === `${api}/pairing`;

/**
 * Lets nobody in from the local network but paired devices: a stranger's browser is led to the page that pairs it,
 * everything else that a stranger asks is refused.
 *
 * @param api - where the API begins
 */
export function pairedOnly(visitors: Visitors, api: string): RequestHandler {
  const overNetwork: RequestHandler = async (request, response, next) => {
    if (isForStrangers(request, api) || (await visitors.admit(request, response))) return next();
    if (READS.has(request.method) && !/^\/api(\/|$)/i.test(request.path)) {
      response.set("Cache-Control", "no-store").redirect(303, PAIRING_PAGE);
      return;
    }
    const message = `This device is not paired with the bench, or was revoked. Open ${PAIRING_PAGE} on it, with a code from Bench, Devices on the machine that Gripcurve runs on.`;
    throw new Refusal(401, "not-paired", message, [], {
      "WWW-Authenticate": `Pairing page="${PAIRING_PAGE}"`,
    });
  };
  return (request, response, next) =>
    isOverNetwork(request) ? overNetwork(request, response, next) : next();
}
