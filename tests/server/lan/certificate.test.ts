import { X509Certificate } from "node:crypto";
import { readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { platform } from "node:os";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { certificateFile, certificateFor } from "#server/lan/certificate.ts";
import { networkNames } from "#server/lan/names.ts";
import { freshFolder } from "../support/book.ts";

const NAMES = ["192.168.1.20", "bench.local"];
const at = new Date("2026-03-01T08:00:00Z");
const later = (days: number): Date => new Date(at.getTime() + days * 86_400_000);
const freshFile = (): string => join(freshFolder(), "book.db");

describe("the certificate, at the first use", () => {
  it("holds every name and address, for a server alone, and phones take one that long", async () => {
    const { cert, fingerprint } = await certificateFor(freshFile(), NAMES, at);
    const x509 = new X509Certificate(cert);
    expect(x509.subjectAltName).toBe("IP Address:192.168.1.20, DNS:bench.local");
    expect(x509.checkIP("192.168.1.20")).toBe("192.168.1.20");
    expect(x509.checkHost("other.local", { subject: "never" })).toBeUndefined();
    expect(x509.ca).toBe(false);
    // RFC 5280, 4.2.1.12: id-kp-serverAuth.
    expect(x509.keyUsage).toEqual(["1.3.6.1.5.5.7.3.1"]);
    // Apple, "Requirements for trusted certificates in iOS 13 and macOS 10.15": at most 825 days (from memory).
    expect(Date.parse(x509.validTo) - Date.parse(x509.validFrom)).toBeLessThanOrEqual(825 * 86_400_000);
    expect(x509.publicKey.asymmetricKeyDetails).toEqual({ namedCurve: "prime256v1" });
    expect(fingerprint).toMatch(/^([0-9A-F]{2}:){31}[0-9A-F]{2}$/);
  });

  it("lies beside the data file with its key, which only this account may read, and nothing else does", async () => {
    const file = freshFile();
    await certificateFor(file, NAMES, at);
    expect(readdirSync(dirname(file))).toEqual(["book.db.lan.pem"]);
    expect(readFileSync(certificateFile(file), "utf8")).toMatch(/BEGIN CERTIFICATE[\s\S]+BEGIN PRIVATE KEY/);
    if (platform() !== "win32") expect(statSync(certificateFile(file)).mode & 0o777).toBe(0o600);
  });
});

describe("the certificate, at a later start", () => {
  it("with the same names, or some of them: is the same", async () => {
    const file = freshFile();
    const first = await certificateFor(file, NAMES, at);
    expect(await certificateFor(file, NAMES, later(700))).toEqual(first);
    expect(await certificateFor(file, ["bench.local"], later(1))).toEqual(first);
  });

  it.each([
    ["another address", [...NAMES, "10.0.0.7"], later(1)],
    ["another name", ["shop.local", ...NAMES], later(1)],
    ["its end near", NAMES, later(800)],
    ["a clock from before it", NAMES, later(-30)],
  ])("with %s: is another, with what is asked in it", async (_what, names, then) => {
    const file = freshFile();
    const first = await certificateFor(file, NAMES, at);
    const second = await certificateFor(file, names, then);
    expect(second.fingerprint).not.toBe(first.fingerprint);
    const x509 = new X509Certificate(second.cert);
    expect(x509.subjectAltName?.split(", ")).toHaveLength(names.length);
    expect(await certificateFor(file, names, then)).toEqual(second);
  });

  it("with a file that was broken off, or whose key is another's: is made anew", async () => {
    const file = freshFile();
    const { cert } = await certificateFor(file, NAMES, at);
    const { key } = await certificateFor(freshFile(), NAMES, at);
    for (const text of ["", cert.slice(0, 200), cert, `${cert}${key}`]) {
      writeFileSync(certificateFile(file), text);
      const made = await certificateFor(file, NAMES, at);
      expect(made.cert).not.toBe(cert);
      expect(await certificateFor(file, NAMES, at)).toEqual(made);
    }
  });
});

describe("names on the network", () => {
  it("begin with those that were given, each once, none of this machine alone", () => {
    const names = networkNames(["shop.example", "shop.example"]);
    expect(names[0]).toBe("shop.example");
    expect(new Set(names).size).toBe(names.length);
    for (const own of ["127.0.0.1", "localhost", "::1"]) expect(names).not.toContain(own);
  });
});
