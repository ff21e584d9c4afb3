import { onlyFinite } from "../finite.ts";

/** @returns an answer as the bytes that travel @throws {NotFiniteError} on a number that JSON can't say */
export const jsonBytes = (answer: object): Uint8Array =>
  new TextEncoder().encode(JSON.stringify(answer, onlyFinite));
