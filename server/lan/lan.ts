/** How this machine is reached over its local network. */
export interface Lan {
  /** names and addresses that the certificate holds, in lower case, the likeliest to work first */
  readonly names: readonly string[];
  /** the port on which TLS is served, once it is */
  readonly port: number;
  /** SHA-256 of the certificate */
  readonly fingerprint: string;
}

/** @returns the address of the screens under each name: "https://192.168.1.20:4311" */
export const addressesOf = ({ names, port }: Lan): string[] =>
  names.map((name) => `https://${name.includes(":") ? `[${name}]` : name}:${port}`);
