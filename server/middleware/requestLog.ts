import type { RequestHandler } from "express";

/** Whatever is no plain letter of an address could write lines of its own into the log. */
const UNPRINTABLE = /[^\x21-\x7e]/g;

/**
 * Writes a line for each request, once it is answered or given up: when, what, status, how long. Queries, headers and
 * bodies stay out of it: they hold what the user wrote.
 *
 * @param write - receives the line
 */
export function logRequests(write: (line: string) => void, clock: () => Date): RequestHandler {
  return (request, response, next) => {
    const start = performance.now();
    const [path] = request.originalUrl.split("?");
    response.once("close", () => {
      const took = (performance.now() - start).toFixed(1);
      const status = response.writableFinished ? response.statusCode : "left";
      const what = `${request.method} ${path.replace(UNPRINTABLE, "?")}`;
      write(`${clock().toISOString()} ${what} ${status} ${took} ms`);
    });
    next();
  };
}
