import { steppedValues } from "../../decide/choose/count.ts";
import type { FamilySize, TriedPropeller, TriedRotor } from "../../decide/choose/problem.ts";
import { burstSpeedOf } from "../../decide/limits/rotor.ts";
import type { ChooseRequest } from "../../model/api/choose.ts";
import type { Rotor } from "../../model/parts/rotor.ts";
import type { TestedAt } from "../../physics/point/sizeLaw.ts";
import { findById } from "../book.ts";
import { stackedBy } from "../fitUp/stackedBy.ts";
import { rotorBody } from "../limitsInput.ts";
import { powerOf, propellerBasis } from "../propellerBasis.ts";
import { type RotorBasis, rotorBasis, testedAt } from "../rotorBasis.ts";
import { nearestSize, rotorHeight, rotorMass } from "../rotorSize.ts";
import { type Context, tried } from "./context.ts";

type Asked = ChooseRequest["rotors"][number];

function sizeOf({ build, housing }: Context, rotor: Rotor, diameter: number, mass: number): FamilySize {
  return {
    diameter,
    mass,
    height: rotorHeight(rotor, diameter) ?? 0,
    price: nearestSize(rotor, diameter).price,
    stacked: stackedBy(build, "rotor", { ...housing, rotor, diameter }),
  };
}

/** The sizes that are asked for, the family's own unless given; why not where one has no mass. */
function sizesOf(context: Context, rotor: Rotor, asked: Asked, at: string): FamilySize[] | string {
  const diameters = asked.diameters
    ? steppedValues(`${at}.diameters`, asked.diameters)
    : rotor.sizes.map(({ diameter }) => diameter);
  const sizes = diameters.map((diameter) => {
    const mass = rotorMass(rotor, diameter);
    return mass === null ? null : sizeOf(context, rotor, diameter, mass);
  });
  const weighed = sizes.filter((size) => size !== null);
  return weighed.length === sizes.length
    ? weighed
    : `${rotor.name} has a size without a mass: weigh it, on the rotor's page.`;
}

/** Sizes that are corrected from one tested size stand together. */
function groups(
  basis: RotorBasis,
  sizes: readonly FamilySize[],
): Map<string, [TestedAt | null, FamilySize[]]> {
  const found = new Map<string, [TestedAt | null, FamilySize[]]>();
  for (const size of sizes) {
    const correction = testedAt(basis, size.diameter);
    const key = JSON.stringify(correction);
    const group = found.get(key) ?? [correction, []];
    group[1].push(size);
    found.set(key, group);
  }
  return found;
}

/** A family that is asked for. */
interface AskedFamily {
  readonly context: Context;
  readonly rotor: Rotor;
  readonly asked: Asked;
  /** path of the request */
  readonly at: string;
}

function rotorOf({ context, rotor, asked, at }: AskedFamily): readonly TriedRotor[] | string {
  const { rotor: id } = asked;
  const basis = rotorBasis(context.book, id);
  if (basis.basis === "missing") return basis.missing.message;
  const { psi, lambda, phiMin, phiMax, testedDiameters } = basis;
  if (!lambda) return `The power of ${rotor.name} is not known: log the motor's current in its curve tests.`;
  const sizes = sizesOf(context, rotor, asked, at);
  if (typeof sizes === "string") return sizes;
  const curve = { id, basis: basis.basis, psi, lambda, phiMin, phiMax, testedDiameters };
  const strong = (size: FamilySize) => {
    const body = rotorBody(rotor, size.diameter);
    return { ...size, burstSpeed: body && burstSpeedOf(body, size.diameter) };
  };
  return [...groups(basis, sizes).values()].map(([sizeCorrection, group]) => ({
    ...curve,
    testedTipSpeeds: basis.tipSpeeds,
    sizeCorrection,
    sizes: group.map(strong),
  }));
}

function propellerOf({ context, rotor, asked, at }: AskedFamily): readonly TriedPropeller[] | string {
  const { rotor: id } = asked;
  const basis = propellerBasis(context.book, id);
  if (basis.basis === "missing") return basis.missing.message;
  const power = powerOf(basis);
  if (!power) return basis.lacksPower?.message ?? `The power of ${rotor.name} is not known.`;
  const sizes = sizesOf(context, rotor, asked, at);
  if (typeof sizes === "string") return sizes;
  const { fit, chordRatio, testedDiameters } = basis;
  const { thrust, referenceReynolds, testedReynolds } = fit;
  const law = { thrust, power, referenceReynolds, testedReynolds, chordRatio };
  return [
    {
      id,
      basis: "measured",
      ...law,
      testedDiameters,
      testedTipSpeeds: basis.tipSpeeds,
      sizes,
    },
  ];
}

/** @returns the families to try, of both kinds; of rotors in a duct each size corrected from the tested one that is nearest to it */
export function triedRotors(
  context: Context,
  list: readonly Asked[],
): { readonly rotors: TriedRotor[]; readonly propellers: TriedPropeller[] } {
  const made = tried(
    context,
    "rotors",
    list,
    (asked, at): readonly (TriedRotor | TriedPropeller)[] | string => {
      const rotor = findById(context.book.rotors, asked.rotor)?.data;
      if (!rotor) return `The book has no rotor ${asked.rotor}.`;
      const family = { context, rotor, asked, at };
      return rotor.kind === "propeller" ? propellerOf(family) : rotorOf(family);
    },
  );
  return {
    rotors: made.filter((each) => "psi" in each),
    propellers: made.filter((each) => "thrust" in each),
  };
}
