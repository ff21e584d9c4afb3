import type { Book } from "../../../../shared/book/book.ts";
import { findById } from "../../../../shared/book/book.ts";
import { packBasis } from "../../../../shared/book/packBasis.ts";
import { rotorBasis } from "../../../../shared/book/rotorBasis.ts";
import { withdrawnOf } from "../../../../shared/model/withdrawn.ts";
import type { PartList } from "./fields.ts";

/** Why a part can't be admitted, and where that is put right. */
export interface Unusable {
  readonly why: string;
  /** what the link to the part's form, or to a test, says; null: nothing to be done */
  readonly remedy: string | null;
  readonly test?: "curve" | "discharge";
}

const NO_MASS: Unusable = { why: "no mass", remedy: "weigh it" };

function unusableRotor(book: Book, id: string): Unusable | null {
  const rotor = findById(book.rotors, id)?.data;
  if (rotor?.kind === "propeller")
    return { why: "an open propeller: choosing is for rotors in a duct", remedy: null };
  const basis = rotorBasis(book, id);
  if (basis.basis === "missing")
    return { why: "no curve, and none to estimate from its geometry", remedy: "test it", test: "curve" };
  if (!basis.lambda)
    return { why: "its power is not known", remedy: "test it with the motor's current", test: "curve" };
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
