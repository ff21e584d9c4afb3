import { closeSync, openSync, readSync } from "node:fs";

const PIECE = 256_000;

/** @returns what a file holds, piece by piece, all in the same memory: a piece is gone once the next is asked for */
export function* piecesIn(file: string): Generator<Uint8Array> {
  const descriptor = openSync(file, "r");
  try {
    const piece = Buffer.allocUnsafe(PIECE);
    for (;;) {
      const length = readSync(descriptor, piece, 0, PIECE, null);
      if (length === 0) return;
      yield piece.subarray(0, length);
    }
  } finally {
    closeSync(descriptor);
  }
}
