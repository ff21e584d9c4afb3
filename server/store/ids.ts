import { randomInt } from "node:crypto";

const SUFFIX_LENGTH = 5;
const SLUG_LENGTH = 40;
const LETTERS = "abcdefghijkmnpqrstuvwxyz23456789";

/** @returns the name in lower-case letters, digits and hyphens, as far as it has any */
export function slugOf(name: string): string {
  const plain = name.normalize("NFKD").toLowerCase();
  return plain
    .replace(/\p{M}/gu, "")
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, SLUG_LENGTH)
    .replace(/^-+|-+$/g, "");
}

/** @returns an identifier that a person can tell apart: the name's slug and a short random end */
export function newId(name: string): string {
  const end = Array.from({ length: SUFFIX_LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join("");
  return [slugOf(name), end].filter(Boolean).join("-");
}
