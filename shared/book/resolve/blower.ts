import type { Build } from "../../model/build.ts";
import type { Book } from "../book.ts";
import type { Missing } from "../missing.ts";
import { motorBehind } from "../motorBasis.ts";
import { type PropellerBasis, propellerBasis } from "../propellerBasis.ts";
import { nearestTested, type RotorBasis, rotorBasis } from "../rotorBasis.ts";
import { isPropellerBuild, type Parts } from "./parts.ts";

/** Relative difference below which two diameters are one size. */
const SAME_SIZE = 1e-3;

/** What moves the air: a rotor in a duct or an open propeller, and what its tests lack. */
export interface Blower {
  readonly rotor: RotorBasis | null;
  readonly thrust: PropellerBasis | null;
  readonly missing: readonly Missing[];
}

/** What moves the air, by its tests, and what they lack. */
export function blowerOf(book: Book, build: Build, parts: Parts): Blower {
  if (!parts.rotor) return { rotor: null, thrust: null, missing: [] };
  if (isPropellerBuild(parts)) {
    const answer = propellerBasis(book, build.rotor);
    if (answer.basis === "missing") return { rotor: null, thrust: null, missing: [answer.missing] };
    const { lacksPower } = answer;
    return { rotor: null, thrust: answer, missing: lacksPower ? [lacksPower] : [] };
  }
  const answer = rotorBasis(book, build.rotor);
  if (answer.basis === "missing") return { rotor: null, thrust: null, missing: [answer.missing] };
  return { rotor: answer, thrust: null, missing: rotorMissing(book, answer) };
}

/** The nearest tested size [m], where the build's own was not tested. */
export function scaledFrom({ rotor, thrust }: Blower, diameter: number): number | null {
  const nearest = nearestTested({ testedDiameters: (rotor ?? thrust)?.testedDiameters ?? [] }, diameter);
  return nearest !== null && Math.abs(nearest / diameter - 1) > SAME_SIZE ? nearest : null;
}

function rotorMissing(book: Book, rotor: RotorBasis): Missing[] {
  if (rotor.lambda) return [];
  const motor = motorBehind(book, rotor.testIds);
  if (motor) return [motor];
  const message =
    "The rotor's power is not known: log the motor's current in its curve tests and name the motor, so that shaft power follows.";
  return [{ path: "rotor.lambda", message, test: "curve" }];
}
