import type { Book } from "#shared/book/book.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { correctionAt } from "#shared/book/testedSizes.ts";
import type { SizeAllows, SizeBuild, SizeQuestion } from "#shared/decide/size/input.ts";
import type { Build } from "#shared/model/build.ts";
import { torqueConstant } from "#shared/physics/motor.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

export const NOTHING_ALLOWED: SizeAllows = {
  motor: { windingLimit: null, ratedVoltage: null, maxCurrent: null },
  cell: { maxCurrent: null, minimumVoltage: null },
  rotor: null,
};

const PACK = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 3.75,
  cellResistance: 0.026,
  wireResistance: 0.014,
};

/** The pane crawler without its motor's winding. */
export const CRAWLER: SizeBuild = {
  ...PANE_CRAWLER,
  pack: PACK,
  motor: { motorConstant: 0.0045, frictionTorque: 6e-4, viscousTorque: 1e-8, thermalResistance: null },
};

export function question(
  change: Partial<SizeBuild> = {},
  need: SizeQuestion["need"] = { pull: 6 },
): SizeQuestion {
  return { build: { ...CRAWLER, ...change }, need, allows: NOTHING_ALLOWED, cell: null };
}

/** A build of the book asked for another size, its motor's strength kept. */
export function questionOf(book: Book, build: Build, need: SizeQuestion["need"]): SizeQuestion {
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  if (!input) throw new Error(resolved.missing.map(({ message }) => message).join(" "));
  const { kv, resistance, thermalResistance, frictionTorque, viscousTorque } = input.motor;
  const motorConstant = torqueConstant(kv) / Math.sqrt(resistance);
  const sizes = resolved.rotor?.sizes ?? [];
  const { rotor } = input;
  const rotorAt = (diameter: number) =>
    "thrust" in rotor
      ? { ...rotor, diameter, chord: (rotor.chord * diameter) / rotor.diameter }
      : { ...rotor, diameter, sizeCorrection: correctionAt(sizes, diameter) };
  return {
    build: {
      ...input,
      rotorAt,
      skirt: "skirt" in input ? input.skirt : null,
      motor: { motorConstant, thermalResistance, frictionTorque, viscousTorque },
    },
    need,
    allows: NOTHING_ALLOWED,
    cell: null,
  };
}
