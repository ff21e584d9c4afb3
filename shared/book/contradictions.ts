import type { FieldError } from "../model/api/errors.ts";
import type { Rotor } from "../model/parts/rotor.ts";
import type { BenchTest } from "../model/tests/index.ts";
import { formatQuantity } from "../units/format.ts";
import { toSI } from "../units/quantity.ts";
import { isSameSize } from "./testedSizes.ts";

/** What a kind of test can be made of; a pull test is made with either. */
const KIND_OF_ROTOR: Readonly<Partial<Record<BenchTest["kind"], Rotor["kind"]>>> = {
  curve: "ducted",
  thrust: "propeller",
};

const NAMES: Readonly<Record<Rotor["kind"], string>> = { ducted: "a ducted rotor", propeller: "a propeller" };

const sizesOf = ({ sizes }: Pick<Rotor, "sizes">): string =>
  sizes.map(({ diameter }) => formatQuantity(diameter, "length")).join(", ");

/** The part of a test that a rotor can contradict. */
export type RotorTest = Pick<Extract<BenchTest, { readonly diameter: unknown }>, "kind" | "diameter">;

/** @returns whether a test names a rotor and its diameter */
export const isRotorTest = (data: object): data is RotorTest & { readonly rotor: string } =>
  "rotor" in data && "diameter" in data && "kind" in data;

/**
 * What in a test can't be true of the rotor that it names.
 *
 * @param test - its kind and the diameter as typed
 * @param rotor - as stored
 * @returns each contradicted field of the test with what is allowed; empty where test and rotor agree
 */
export function contradictionsOf(
  test: RotorTest,
  rotor: Pick<Rotor, "name" | "kind" | "sizes">,
): FieldError[] {
  return [...kindContradiction(test, rotor), ...sizeContradiction(test, rotor)];
}

function kindContradiction({ kind }: RotorTest, rotor: Pick<Rotor, "name" | "kind">): FieldError[] {
  const wanted = KIND_OF_ROTOR[kind];
  if (!wanted || rotor.kind === wanted) return [];
  const message = `${rotor.name} is ${NAMES[rotor.kind]}; allowed: ${NAMES[wanted]}, for a ${kind} test.`;
  return [{ path: "rotor", message }];
}

function sizeContradiction({ diameter }: RotorTest, rotor: Pick<Rotor, "name" | "sizes">): FieldError[] {
  const typed = toSI(diameter, "length");
  if (rotor.sizes.some((size) => isSameSize(size.diameter, typed))) return [];
  const message = `Read ${diameter.value} ${diameter.unit}; allowed: a size of ${rotor.name}, ${sizesOf(rotor)}. Add a further size to the rotor first.`;
  return [{ path: "diameter", message }];
}
