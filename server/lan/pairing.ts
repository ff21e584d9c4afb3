import { createHash, randomBytes } from "node:crypto";

/** How long a code pairs a device [ms]. */
export const CODE_LIVES = 10 * 60_000;
/** Wrong codes are counted over this time [ms]. */
const WINDOW = 10 * 60_000;
/** Wrong codes that one peer may send in that time. */
const PER_PEER = 5;
/** Wrong codes that all peers together may send in that time. */
const IN_ALL = 50;
/** 128 bits. */
const CODE_BYTES = 16;

/** @returns a secret as it is kept: SHA-256, in hexadecimal digits */
export const hashOf = (secret: string): string => createHash("sha256").update(secret).digest("hex");

/** A code as it was read or typed: whatever stands between its digits, capitals, and o and l in the place of 0 and 1. */
const plain = (code: string): string =>
  code
    .toLowerCase()
    .replace(/[\s-]+/g, "")
    .replaceAll("o", "0")
    .replaceAll("l", "1");

export type Attempt = { readonly is: "right" | "wrong" } | { readonly is: "too-many"; readonly wait: number };

interface Wrong {
  readonly peer: string;
  readonly at: number;
}

/**
 * Codes that pair a device. One is good at a time, for ten minutes and one device; it is kept as a hash, in memory
 * alone. Whoever guesses is made to wait.
 */
export class Pairing {
  #code: { readonly hash: string; readonly until: number } | null = null;
  #wrong: readonly Wrong[] = [];

  /** @param now - a clock that never goes back [ms] */
  constructor(private readonly now: () => number = () => performance.now()) {}

  /** @returns a new code, 32 hexadecimal digits; the last one is good no more */
  newCode(): string {
    const code = randomBytes(CODE_BYTES).toString("hex");
    this.#code = { hash: hashOf(code), until: this.now() + CODE_LIVES };
    return code;
  }

  /**
   * Tries a code, and uses it up where it is right.
   *
   * @param peer - the address that it came from
   * @returns what came of it; `wait` is how long the peer isn't listened to [s]
   */
  attempt(code: string, peer: string): Attempt {
    const now = this.now();
    this.#wrong = this.#wrong.filter(({ at }) => now - at < WINDOW);
    const ofPeer = this.#wrong.filter((each) => each.peer === peer);
    const [first] = ofPeer.length >= PER_PEER ? ofPeer : this.#wrong.length >= IN_ALL ? this.#wrong : [];
    if (first) return { is: "too-many", wait: Math.ceil((first.at + WINDOW - now) / 1000) };
    if (this.#code !== null && now < this.#code.until && hashOf(plain(code)) === this.#code.hash) {
      this.#code = null;
      return { is: "right" };
    }
    this.#wrong = [...this.#wrong, { peer, at: now }];
    return { is: "wrong" };
  }
}
