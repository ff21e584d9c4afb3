import type { RotorBody } from "../../decide/limits/input.ts";
import type { RotorInput } from "../../physics/point/machine.ts";
import type { TestedAt } from "../../physics/point/sizeLaw.ts";
import type { PropellerInput } from "../../physics/propellerLaw.ts";
import { type Book, findById } from "../book.ts";
import { rotorBody } from "../limitsInput.ts";
import { powerOf, propellerBasis } from "../propellerBasis.ts";
import { rotorBasis } from "../rotorBasis.ts";

/** A rotor family at its first size, with what its size correction needs at others. */
export interface Family {
  readonly id: string;
  readonly name: string;
  readonly rotor: RotorInput | PropellerInput;
  /** none of a propeller or an estimate */
  readonly sizes: readonly TestedAt[];
  /** of the first size; null: its material isn't known */
  readonly body: RotorBody | null;
  readonly estimated: boolean;
}

/** A family that can't be sized, and why. */
export interface LeftOutFamily {
  readonly name: string;
  readonly why: string;
}

export interface Families {
  readonly families: readonly Family[];
  readonly leftOut: readonly LeftOutFamily[];
}

type Stored = Book["rotors"][number];

function ductedFamily(book: Book, { id, data }: Stored): Family | string {
  const basis = rotorBasis(book, id);
  if (basis.basis === "missing") return basis.missing.message;
  const { psi, lambda, phiMin, phiMax } = basis;
  if (!lambda) return "its power is not known: log the motor's current in its curve tests.";
  const [{ diameter }] = data.sizes;
  return {
    id,
    name: data.name,
    rotor: { diameter, psi, lambda, phiMin, phiMax, sizeCorrection: null },
    sizes: basis.sizes,
    body: rotorBody(data, diameter),
    estimated: basis.basis === "estimated",
  };
}

function propellerFamily(book: Book, { id, data }: Stored): Family | string {
  const basis = propellerBasis(book, id);
  if (basis.basis === "missing") return basis.missing.message;
  const power = powerOf(basis);
  if (!power) return basis.lacksPower?.message ?? "its power is not known.";
  const [{ diameter }] = data.sizes;
  const { thrust, referenceReynolds, testedReynolds } = basis.fit;
  const chord = basis.chordRatio * diameter;
  const rotor = {
    kind: "propeller",
    diameter,
    thrust,
    power,
    referenceReynolds,
    chord,
    testedReynolds,
  } as const;
  return { id, name: data.name, rotor, sizes: [], body: null, estimated: false };
}

export type RotorKind = Stored["data"]["kind"];

/**
 * The rotor families of one kind: rotors in a duct, or open propellers.
 *
 * @param book - the whole bench book
 * @param kind - of the families
 * @param own - the build's own rotor, by identifier
 * @returns the build's own family first where it is of that kind, then the others in the book's order; those that lack a curve with the reason
 */
export function familiesOf(book: Book, kind: RotorKind, own: string): Families {
  const first = findById(book.rotors, own);
  const isFirst = first !== null && first.data.kind === kind;
  const rest = book.rotors.filter(({ id, data }) => id !== own && data.kind === kind && !data.retired);
  const families: Family[] = [];
  const leftOut: LeftOutFamily[] = [];
  for (const rotor of isFirst ? [first, ...rest] : rest) {
    const family = kind === "propeller" ? propellerFamily(book, rotor) : ductedFamily(book, rotor);
    if (typeof family === "string") leftOut.push({ name: rotor.data.name, why: family });
    else families.push(family);
  }
  return { families, leftOut };
}
