import compression from "compression";
import type { Request, RequestHandler, Response } from "express";

/**
 * A strong ETag names the very bytes (RFC 9110, 8.8.3): compressed, a record would need another one, and `If-Match`
 * would no longer know it. Event streams must not wait for a block to fill.
 */
function isWorthIt(request: Request, response: Response): boolean {
  const tag = String(response.getHeader("ETag") ?? "");
  const type = String(response.getHeader("Content-Type") ?? "");
  if (tag.startsWith('"') || type.startsWith("text/event-stream")) return false;
  return compression.filter(request, response);
}

const pack = compression({ filter: isWorthIt });

/** Packs what is worth it, for whoever reads packed answers: screens, lists, archives, long answers. */
export const compressAnswers: RequestHandler = (request, response, next) => {
  if (request.headers["accept-encoding"] !== undefined) pack(request, response, next);
  else {
    response.setHeader("Vary", "Accept-Encoding");
    next();
  }
};
