import type { Build } from "../../model/build.ts";
import { openCircuitVoltage } from "../../physics/pack.ts";
import type { Book } from "../book.ts";
import { packBasis } from "../packBasis.ts";
import { type Range, rangeAround } from "./diameters.ts";
import type { RotorKind } from "./families.ts";

/** Charge at whose voltage a size is wanted unless another is asked for: below, a cell falls fast. Common practice, no source. */
const CHARGE_LEFT = 0.2;
/** A rotor that none of the book comes near [m]. */
const USUAL: Readonly<Record<RotorKind, number>> = { ducted: 0.045, propeller: 0.13 };

/** @returns voltage of one cell of a build's pack at which a size is wanted [V]; 0 where the pack's isn't known */
export function usualVoltage(book: Book, { pack }: Pick<Build, "pack">): number {
  const basis = packBasis(book, pack);
  return basis && basis.basis !== "missing" ? openCircuitVoltage(basis.cell.curve, CHARGE_LEFT) : 0;
}

/** @returns the sizes that are looked at: round the build's own, else round the first size of a kind [m] */
export function usualRange(book: Book, build: Pick<Build, "rotor" | "diameter">, kind: RotorKind): Range {
  const own = book.rotors.find(({ id }) => id === build.rotor)?.data.kind ?? "ducted";
  if (own === kind) return rangeAround(build.diameter);
  const first = book.rotors.find(({ data }) => data.kind === kind && !data.retired);
  return rangeAround(first?.data.sizes[0].diameter ?? USUAL[kind]);
}
