import type { Response } from "express";
import { sendJson } from "./jsonBytes.ts";

/**
 * Waits for long work as long as somebody waits for its answer: who leaves gives it up.
 *
 * @returns the work's answer; null where nobody is there to read it
 */
async function whileWaited<T>(
  response: Response,
  work: (signal: AbortSignal) => Promise<T>,
): Promise<T | null> {
  const gone = new AbortController();
  const leave = () => gone.abort();
  response.on("close", leave);
  try {
    const answer = await work(gone.signal);
    return gone.signal.aborted ? null : answer;
  } catch (error) {
    if (gone.signal.aborted) return null;
    throw error;
  } finally {
    response.off("close", leave);
  }
}

/** Sends the JSON that long work ends with, unless nobody waits for it any more. */
export async function sendWhenDone(
  response: Response,
  work: (signal: AbortSignal) => Promise<Uint8Array>,
): Promise<void> {
  const json = await whileWaited(response, work);
  if (json) sendJson(response.status(200), json);
}
