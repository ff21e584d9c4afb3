import type { RequestHandler } from "express";
import { Refusal } from "../refusal.ts";

const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join("; ");

const HEADERS = {
  "Content-Security-Policy": CONTENT_SECURITY_POLICY,
  "Cross-Origin-Opener-Policy": "same-origin",
  "Origin-Agent-Cluster": "?1",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": "camera=(), geolocation=(), microphone=(self)",
  "Referrer-Policy": "no-referrer",
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "X-Permitted-Cross-Domain-Policies": "none",
} as const;
const LINES = Object.entries(HEADERS);

/** Scripts, styles and data come from this server alone, and no other page may frame it. */
export const securityHeaders: RequestHandler = (_request, response, next) => {
  for (const [name, value] of LINES) response.setHeader(name, value);
  next();
};

const CHANGES = new Set(["POST", "PUT", "DELETE", "PATCH"]);
/** What a browser says of a request that one of our own pages, or its user, makes (Fetch Metadata Request Headers, 2.4). */
const OUR_SITES = new Set([undefined, "same-origin", "none"]);

/** A page of another origin that happens to be open must not write into the book. */
export const refuseOtherOrigins: RequestHandler = (request, _response, next) => {
  const origin = request.get("origin");
  const ours = origin === undefined || hostOf(origin) === request.get("host");
  if (CHANGES.has(request.method) && !(ours && OUR_SITES.has(request.get("sec-fetch-site")))) {
    const page = origin === undefined || ours ? "A page of another site" : `A page of ${origin}`;
    throw new Refusal(403, "other-origin", `${page} can't change this bench book.`);
  }
  next();
};

const hostOf = (origin: string): string | null => (URL.canParse(origin) ? new URL(origin).host : null);
