import type { Response } from "express";
import { onlyFinite } from "../finite.ts";

/** @returns an answer as the bytes that travel @throws {NotFiniteError} on a number that JSON can't say */
export const jsonBytes = (answer: object): Uint8Array =>
  new TextEncoder().encode(JSON.stringify(answer, onlyFinite));

const COMMA = Buffer.from(",");

/** @returns the JSON of a list, between two pieces of text, from that of its entries */
export function listBytes(before: string, entries: readonly Uint8Array[], behind: string): Uint8Array {
  const separated = entries.flatMap((entry, i) => (i === 0 ? [entry] : [COMMA, entry]));
  return Buffer.concat([Buffer.from(before), ...separated, Buffer.from(behind)]);
}

/** Sends JSON that is ready to go out. */
export function sendJson(response: Response, json: Uint8Array): void {
  response.type("json").send(Buffer.from(json.buffer, json.byteOffset, json.byteLength));
}
