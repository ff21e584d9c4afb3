import type { NextTest } from "../../../../shared/book/nextTest/nextTests.ts";
import { href } from "../../../app/router.ts";

/** Where a test is put down, and what the link says. */
export interface Link {
  readonly address: string;
  readonly words: string;
}

/** @returns the form of a new test; the newest test to correct; for the scale, the build's own form */
export function linkOf({ kind, corrects }: NextTest, buildId: string): Link {
  const [newest] = corrects;
  if (newest !== undefined) return { address: href("bench", newest), words: "correct it" };
  if (kind === null) return { address: href("parts", `builds/${buildId}`), words: "state it" };
  return { address: href("bench", `new/${kind}`), words: "log it" };
}
