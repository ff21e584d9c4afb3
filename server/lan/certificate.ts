import { createPrivateKey, X509Certificate } from "node:crypto";
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { isIP } from "node:net";
import { flush, UNFINISHED } from "../store/placing.ts";

const DAY = 86_400_000;
/** The longest that phones take a server's certificate for [ms]. */
const VALID_FOR = 820 * DAY;
/** Made anew at a start with less left than this, so that it doesn't end while the server runs [ms]. */
const LEAST_LEFT = 60 * DAY;
/** A clock that lags behind must not find it made in the future [ms]. */
const BACKDATED = DAY;

/** What the server shows of itself on the local network, with the key that proves it. */
export interface Certificate {
  readonly cert: string;
  readonly key: string;
  /** SHA-256 of the certificate, in pairs of hexadecimal digits between colons, as browsers show it */
  readonly fingerprint: string;
}

/** @returns where certificate and key lie, both in one file, so that they always belong together */
export const certificateFile = (dataFile: string): string => `${dataFile}.lan.pem`;

const PEM = /-----BEGIN ([A-Z ]+)-----[\s\S]+?-----END \1-----\n?/g;

/** @throws {Error} on a text that holds no certificate, or no key to it */
function read(text: string): Certificate & { readonly x509: X509Certificate } {
  const blocks = new Map([...text.matchAll(PEM)].map(([block, label]) => [label, block]));
  const [cert, key] = [blocks.get("CERTIFICATE") ?? "", blocks.get("PRIVATE KEY") ?? ""];
  const x509 = new X509Certificate(cert);
  if (!x509.checkPrivateKey(createPrivateKey(key))) throw new Error("The key is of another certificate.");
  return { cert, key, fingerprint: x509.fingerprint256, x509 };
}

const covers = (x509: X509Certificate, name: string): boolean =>
  (isIP(name) === 0 ? x509.checkHost(name, { subject: "never" }) : x509.checkIP(name)) !== undefined;

/** @returns the certificate of a file; null where there is none, or it no longer serves */
function kept(file: string, names: readonly string[], at: Date): Certificate | null {
  if (!existsSync(file)) return null;
  try {
    const { x509, ...certificate } = read(readFileSync(file, "utf8"));
    const [from, to] = [Date.parse(x509.validFrom), Date.parse(x509.validTo)];
    const serves = from <= at.getTime() && at.getTime() + LEAST_LEFT <= to;
    return serves && names.every((name) => covers(x509, name)) ? certificate : null;
  } catch (error) {
    // Broken off, or changed by hand: one is made in its place.
    if (error instanceof Error) return null;
    throw error;
  }
}

async function made(names: readonly string[], at: Date): Promise<string> {
  const { generate } = await import("selfsigned");
  const altNames = names.map((name) =>
    isIP(name) === 0 ? ({ type: 2, value: name } as const) : ({ type: 7, ip: name } as const),
  );
  const pems = await generate([{ name: "commonName", value: "Gripcurve" }], {
    keyType: "ec",
    curve: "P-256",
    algorithm: "sha256",
    notBeforeDate: new Date(at.getTime() - BACKDATED),
    notAfterDate: new Date(at.getTime() + VALID_FOR),
    extensions: [
      { name: "basicConstraints", cA: false, critical: true },
      { name: "keyUsage", digitalSignature: true, critical: true },
      { name: "extKeyUsage", serverAuth: true },
      { name: "subjectAltName", altNames },
    ],
  });
  return `${pems.cert.trim()}\n${pems.private.trim()}\n`;
}

/** Only this account may read it. */
function write(file: string, text: string): void {
  const unfinished = `${file}.${process.pid}${UNFINISHED}`;
  rmSync(unfinished, { force: true });
  writeFileSync(unfinished, text, { mode: 0o600, flag: "wx" });
  flush(unfinished);
  renameSync(unfinished, file);
}

/**
 * The certificate that lies beside the data file; made at the first use, and anew where a name is missing in it or it
 * is about to end.
 *
 * @param names - names and addresses that it must hold
 */
export async function certificateFor(
  dataFile: string,
  names: readonly string[],
  at: Date,
): Promise<Certificate> {
  const file = certificateFile(dataFile);
  const found = kept(file, names, at);
  if (found) return found;
  const text = await made(names, at);
  write(file, text);
  const { x509: _, ...certificate } = read(text);
  return certificate;
}
