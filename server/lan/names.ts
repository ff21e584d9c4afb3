import { isIP } from "node:net";
import { hostname, networkInterfaces } from "node:os";

/** An address that a machine gives itself where nobody else gave it one leads nowhere (RFC 3927). */
const SELF_GIVEN = /^169\.254\./;

/** A name without a dot is looked up on a local network under "local" (RFC 6762). */
const onNetwork = (name: string): string => (name.includes(".") ? name : `${name}.local`);

/**
 * What this machine can be asked by on its networks.
 *
 * @param given - names and addresses that were set by hand; they come first
 * @returns names and IPv4 addresses without ports, in lower case, each once; the machine's own name last
 */
export function networkNames(given: readonly string[]): string[] {
  const addresses = Object.values(networkInterfaces()).flatMap((each = []) =>
    each.flatMap(({ family, internal, address }) =>
      family === "IPv4" && !internal && !SELF_GIVEN.test(address) ? [address] : [],
    ),
  );
  const own = hostname().toLowerCase();
  const named = /^[a-z0-9._-]+$/.test(own) && isIP(own) === 0 ? [onNetwork(own)] : [];
  return [...new Set([...given, ...addresses, ...named])];
}
