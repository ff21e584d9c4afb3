import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { Response } from "express";

/** Who leaves in the middle of a long answer has no use for the rest. */
const hasLeft = (error: unknown): boolean =>
  error instanceof Error && "code" in error && error.code === "ERR_STREAM_PREMATURE_CLOSE";

/** Sends a long answer piece by piece, no faster than it is read. */
export async function sendPieces(
  pieces: Iterable<string> | AsyncIterable<string>,
  response: Response,
): Promise<void> {
  await pipeline(Readable.from(pieces), response).catch((error: unknown) => {
    if (!hasLeft(error)) throw error;
  });
}
