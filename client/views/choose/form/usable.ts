import type { Book } from "../../../../shared/book/book.ts";
import { findById } from "../../../../shared/book/book.ts";
import { packBasis } from "../../../../shared/book/packBasis.ts";
import { powerOf, propellerBasis } from "../../../../shared/book/propellerBasis.ts";
import { rotorBasis } from "../../../../shared/book/rotorBasis.ts";
import { withdrawnOf } from "../../../../shared/model/withdrawn.ts";
import type { PartList } from "./fields.ts";

/** Why a part can't be tried, and where that is put right. */
export interface Unusable {
  readonly why: string;
  /** what the link to the part's form, or to a test, says; null: nothing to be done */
  readonly remedy: string | null;
  readonly test?: "curve" | "thrust" | "discharge";
}

const NO_MASS: Unusable = { why: "no mass", remedy: "weigh it" };

/** What a propeller's thrust tests leave open. */
function untestedPropeller(book: Book, id: string): Unusable | null {
  const basis = propellerBasis(book, id);
  if (basis.basis === "missing") return { why: "no thrust test", remedy: "test it", test: "thrust" };
  if (powerOf(basis)) return null;
  return { why: "its power is not known", remedy: "test it with the motor's current", test: "thrust" };
}

/** What the curve tests of a rotor in a duct leave open. */
function untestedRotor(book: Book, id: string): Unusable | null {
  const basis = rotorBasis(book, id);
  if (basis.basis === "missing")
    return { why: "no curve, and none to estimate from its geometry", remedy: "test it", test: "curve" };
  if (!basis.lambda)
    return { why: "its power is not known", remedy: "test it with the motor's current", test: "curve" };
  return null;
}

function unusableRotor(book: Book, id: string): Unusable | null {
  const rotor = findById(book.rotors, id)?.data;
  const untested = rotor?.kind === "propeller" ? untestedPropeller(book, id) : untestedRotor(book, id);
  if (untested) return untested;
  return rotor?.sizes.some(({ mass }) => mass === undefined) ? NO_MASS : null;
}

function unusablePack(book: Book, id: string): Unusable | null {
  if (packBasis(book, id)?.basis === "missing")
    return { why: "no voltage by charge", remedy: "test it", test: "discharge" };
  return findById(book.packs, id)?.data.mass === undefined ? NO_MASS : null;
}

/** @returns what keeps a part from being solved with; null: nothing */
export function unusable(book: Book, list: PartList, id: string): Unusable | null {
  const parts: readonly { readonly id: string; readonly data: { readonly retired?: string } }[] = book[list];
  const part = parts.find((each) => each.id === id);
  const why = part ? withdrawnOf(part.data) : null;
  if (why !== null) return { why: `retired: ${why}`, remedy: null };
  if (list === "rotors") return unusableRotor(book, id);
  if (list === "packs") return unusablePack(book, id);
  if (list === "motors") return findById(book.motors, id)?.data.mass === undefined ? NO_MASS : null;
  return null;
}
