import { createWriteStream } from "node:fs";
import { rm } from "node:fs/promises";
import { join } from "node:path";
import { Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { Request, RequestHandler } from "express";
import { Refusal } from "../refusal.ts";
import { tempFolder } from "../tempFolder.ts";

const tooLarge = (limit: number): Refusal =>
  new Refusal(413, "too-large", `The body is too large; allowed: at most ${limit} bytes.`);

/** Lets through what is within the limit. */
function upTo(limit: number): Transform {
  let length = 0;
  return new Transform({
    transform(chunk: Buffer, _encoding, done) {
      length += chunk.length;
      if (length > limit) done(tooLarge(limit));
      else done(null, chunk);
    },
  });
}

/** Writes a body to a file. @returns false where its sender has left */
async function written(request: Request, file: string, limit: number): Promise<boolean> {
  const limited = upTo(limit);
  request.once("close", () => {
    if (!request.complete) limited.destroy();
  });
  request.pipe(limited);
  try {
    await pipeline(limited, createWriteStream(file));
    return true;
  } catch (error) {
    // The rest is passed over, so that the refusal finds its way to the sender.
    request.unpipe(limited);
    request.resume();
    if (request.closed && !request.complete) return false;
    throw error;
  }
}

/**
 * Writes a body to a file as it comes in, and puts the file's name in the body's place; it goes when the request is over.
 *
 * @param limit - greatest body [byte]
 */
export function bodyInFile(limit: number): RequestHandler {
  return async (request, response, next) => {
    if (Number(request.get("content-length") ?? 0) > limit) throw tooLarge(limit);
    const folder = tempFolder("body");
    response.once("close", () => void rm(folder, { recursive: true, force: true }));
    const file = join(folder, "body");
    if (!(await written(request, file, limit))) return;
    request.body = file;
    next();
  };
}
