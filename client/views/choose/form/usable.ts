import type { Bench } from "../../../../shared/book/bench.ts";
import { findById } from "../../../../shared/book/bench.ts";
import { packBasis } from "../../../../shared/book/packBasis.ts";
import { rotorBasis } from "../../../../shared/book/rotorBasis.ts";
import type { PartList } from "./fields.ts";

/** Why a part can't be admitted, and where that is put right. */
export interface Unusable {
  readonly why: string;
  /** what the link to the part's form, or to a test, says; null: nothing to be done */
  readonly remedy: string | null;
  readonly test?: "curve" | "discharge";
}

const NO_MASS: Unusable = { why: "no mass", remedy: "weigh it" };

function unusableRotor(bench: Bench, id: string): Unusable | null {
  const rotor = findById(bench.rotors, id)?.data;
  if (rotor?.kind === "propeller")
    return { why: "an open propeller: choosing is for rotors in a duct", remedy: null };
  const basis = rotorBasis(bench, id);
  if (basis.basis === "missing")
    return { why: "no curve, and no geometry to estimate one", remedy: "test it", test: "curve" };
  if (!basis.lambda)
    return { why: "its power is not known", remedy: "test it with the motor's current", test: "curve" };
  return rotor?.sizes.some(({ mass }) => mass === undefined) ? NO_MASS : null;
}

function unusablePack(bench: Bench, id: string): Unusable | null {
  if (packBasis(bench, id)?.basis === "missing")
    return { why: "no voltage by charge", remedy: "test it", test: "discharge" };
  return findById(bench.packs, id)?.data.mass === undefined ? NO_MASS : null;
}

/** @returns what keeps a part from being solved with; null: nothing */
export function unusable(bench: Bench, list: PartList, id: string): Unusable | null {
  if (list === "rotors") return unusableRotor(bench, id);
  if (list === "packs") return unusablePack(bench, id);
  if (list === "motors") return findById(bench.motors, id)?.data.mass === undefined ? NO_MASS : null;
  return null;
}
