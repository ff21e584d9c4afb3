import type { Build } from "../../model/build.ts";
import { type Book, findById } from "../book.ts";
import { motorBasis } from "../motorBasis.ts";
import { powerOf, propellerBasis } from "../propellerBasis.ts";
import { rotorBasis } from "../rotorBasis.ts";

type Kind = Book["rotors"][number]["data"]["kind"];

function hasCurve(book: Book, { id, data }: Book["rotors"][number]): boolean {
  if (data.kind === "propeller") {
    const basis = propellerBasis(book, id);
    return basis.basis !== "missing" && powerOf(basis) !== null;
  }
  const basis = rotorBasis(book, id);
  return basis.basis !== "missing" && basis.lambda !== null;
}

/** @returns the first family of a kind with a curve and a power, by identifier; null where the book has none */
export function firstSizable(book: Book, kind: Kind): string | null {
  const found = book.rotors.find(
    (rotor) => rotor.data.kind === kind && !rotor.data.retired && hasCurve(book, rotor),
  );
  return found?.id ?? null;
}

/**
 * A build on whose numbers other families can be sized although its own rotor or motor has none yet.
 *
 * @param book - the whole bench book
 * @param build - a stored build
 * @param motor - as strong as the one wanted, by identifier
 * @returns the build itself where its own parts have numbers; else with the first family that has, and with that motor
 */
export function sizableBuild(book: Book, build: Build, motor: string): Build {
  const own = findById(book.rotors, build.rotor);
  const rotor = own && hasCurve(book, own) ? own.id : firstSizable(book, own?.data.kind ?? "ducted");
  const hasConstants = motorBasis(book, build.motor) !== null;
  return { ...build, rotor: rotor ?? build.rotor, motor: hasConstants ? build.motor : motor };
}
