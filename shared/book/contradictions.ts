import type { FieldError } from "../model/api/errors.ts";
import type { InstrumentPart, Measured } from "../model/parts/instrument.ts";
import type { PlatePart } from "../model/parts/plate.ts";
import type { Rotor } from "../model/parts/rotor.ts";
import { checkCounts } from "../model/tests/flow.ts";
import type { BenchTest } from "../model/tests/index.ts";
import { formatQuantity } from "../units/format.ts";
import { toSI } from "../units/quantity.ts";
import { asPlate } from "./named.ts";
import { isSameSize } from "./testedSizes.ts";

/** What a kind of test can be made of; a pull test is made with either. */
const KIND_OF_ROTOR: Readonly<Partial<Record<BenchTest["kind"], Rotor["kind"]>>> = {
  curve: "ducted",
  thrust: "propeller",
};

const NAMES: Readonly<Record<Rotor["kind"], string>> = { ducted: "a ducted rotor", propeller: "a propeller" };

/** What a place for an instrument takes, where it isn't called so. */
const MEASURED_AT: Readonly<Record<string, Measured>> = { thrust: "load" };

/** The parts that a test can contradict, as its references name them. */
export interface Contradictable {
  readonly rotors: Rotor;
  readonly plates: PlatePart;
  readonly instruments: InstrumentPart;
}

/** What is read of a test to compare it with a part. */
export type Compared = Partial<BenchTest> & { readonly kind: BenchTest["kind"] };

type Rules = {
  readonly [C in keyof Contradictable]: (
    test: Compared,
    part: Contradictable[C],
    path: string,
  ) => FieldError[];
};

/** By collection, what in a test can't be true of the part that stands at a path of it. */
const RULES: Rules = {
  rotors: (test, rotor) => [...kindContradiction(test, rotor), ...sizeContradiction(test, rotor)],
  plates: (test, plate) => countContradictions(test, plate),
  instruments: (_test, instrument, path) => measureContradiction(instrument, path),
};

export const CONTRADICTABLE = Object.keys(RULES) as readonly (keyof Contradictable)[];

/**
 * What in a test can't be true of a part that it names.
 *
 * @param test - as stored
 * @param collection - of the part
 * @param part - as stored
 * @param path - where the test names it: "rotor", "instruments.pressure"
 * @returns each contradicted field of the test with what is allowed; empty where test and part agree
 */
export function contradictionsOf<C extends keyof Contradictable>(
  test: Compared,
  collection: C,
  part: Contradictable[C],
  path: string,
): FieldError[] {
  return (RULES[collection] as Rules[C])(test, part, path);
}

function kindContradiction({ kind }: Compared, rotor: Rotor): FieldError[] {
  const wanted = KIND_OF_ROTOR[kind];
  if (!wanted || rotor.kind === wanted) return [];
  const message = `${rotor.name} is ${NAMES[rotor.kind]}; allowed: ${NAMES[wanted]}, for a ${kind} test.`;
  return [{ path: "rotor", message }];
}

const sizesOf = ({ sizes }: Rotor): string =>
  sizes.map(({ diameter }) => formatQuantity(diameter, "length")).join(", ");

function sizeContradiction(test: Compared, rotor: Rotor): FieldError[] {
  if (!("diameter" in test) || !test.diameter) return [];
  const { diameter } = test;
  const typed = toSI(diameter, "length");
  if (rotor.sizes.some((size) => isSameSize(size.diameter, typed))) return [];
  const message = `Read ${diameter.value} ${diameter.unit}; allowed: a size of ${rotor.name}, ${sizesOf(rotor)}. Add a further size to the rotor first.`;
  return [{ path: "diameter", message }];
}

function countContradictions(test: Compared, plate: PlatePart): FieldError[] {
  const fields: FieldError[] = [];
  const described = asPlate(plate);
  for (const [i, row] of (test.rows ?? []).entries()) {
    if (!("open" in row) || !row.open) continue;
    checkCounts(described, row.open, i, (path, message) =>
      fields.push({ path: path.join("."), message: `${plate.name}: ${message}.` }),
    );
  }
  return fields;
}

function measureContradiction({ name, measures }: InstrumentPart, path: string): FieldError[] {
  const place = path.slice(path.lastIndexOf(".") + 1);
  const wanted = MEASURED_AT[place] ?? place;
  if (measures === wanted) return [];
  return [{ path, message: `${name} measures ${measures}; allowed: an instrument that measures ${wanted}.` }];
}
