import { packBasis } from "../../../shared/book/packBasis.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { RotorKind } from "../../../shared/book/size/families.ts";
import type { WantedHold } from "../../../shared/decide/size/input.ts";
import type { Build } from "../../../shared/model/build.ts";
import { openCircuitVoltage } from "../../../shared/physics/pack.ts";
import type { Asked } from "./asked.ts";
import { type Range, rangeAround } from "./diameters.ts";

/** What stands in the fields. */
export interface Settings {
  /** stored, or what a typed need comes to */
  readonly build: Build;
  readonly hold: WantedHold;
  /** of one cell at rest [V]; 0 where the pack's isn't known */
  readonly cellVoltage: number;
  /** whose strength the motor has, by identifier */
  readonly motor: string;
  readonly ranges: Readonly<Record<RotorKind, Range>>;
}

/** Charge at whose voltage a size is wanted unless another is asked for: below, a cell falls fast. Common practice, no source. */
const CHARGE_LEFT = 0.2;
/** A rotor that none of the book comes near [m]. */
const USUAL: Readonly<Record<RotorKind, number>> = { ducted: 0.045, propeller: 0.13 };

function voltageOf(book: Book, { pack }: Build): number {
  const basis = packBasis(book, pack);
  return basis && basis.basis !== "missing" ? openCircuitVoltage(basis.cell.curve, CHARGE_LEFT) : 0;
}

/** Round the build's own size, else the first size of a kind. */
function usualRange(book: Book, build: Build, kind: RotorKind): Range {
  const own = book.rotors.find(({ id }) => id === build.rotor)?.data.kind ?? "ducted";
  if (own === kind) return rangeAround(build.diameter);
  const first = book.rotors.find(({ data }) => data.kind === kind && !data.retired);
  return rangeAround(first?.data.sizes[0].diameter ?? USUAL[kind]);
}

function rangeOf(book: Book, build: Build, kind: RotorKind, { from, to }: Asked["ranges"][RotorKind]): Range {
  const usual = usualRange(book, build, kind);
  return { from: from ?? usual.from, to: to ?? usual.to };
}

/** @returns what stands in the fields: as asked, else by the build */
export function settingsOf(book: Book, build: Build, asked: Asked): Settings {
  const { ranges } = asked;
  return {
    build,
    hold: { angle: asked.angle ?? "worst", margin: asked.margin ?? build.targetMargin, mode: "driving" },
    cellVoltage: asked.cellVoltage ?? voltageOf(book, build),
    motor: asked.motor ?? build.motor,
    ranges: {
      ducted: rangeOf(book, build, "ducted", ranges.ducted),
      propeller: rangeOf(book, build, "propeller", ranges.propeller),
    },
  };
}
