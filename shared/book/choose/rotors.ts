import { steppedValues } from "../../decide/choose/count.ts";
import type { AdmittedRotor, RotorSize } from "../../decide/choose/problem.ts";
import { burstSpeedOf } from "../../decide/limits/rotor.ts";
import type { ChooseRequest } from "../../model/api/choose.ts";
import type { Rotor } from "../../model/parts/rotor.ts";
import { tipSpeed } from "../../physics/fanlaws/coefficients.ts";
import { RPM } from "../../physics/motor.ts";
import type { TestedAt } from "../../physics/point/sizeLaw.ts";
import { findById } from "../book.ts";
import { stackedBy } from "../fitUp/stackedBy.ts";
import { rotorBody } from "../limitsInput.ts";
import { type RotorBasis, rotorBasis, testedAt } from "../rotorBasis.ts";
import { nearestSize, rotorHeight, rotorMass } from "../rotorSize.ts";
import { admitted, type Context } from "./context.ts";

type Asked = ChooseRequest["rotors"][number];

function sizeOf({ build, housing }: Context, rotor: Rotor, diameter: number, mass: number): RotorSize {
  const body = rotorBody(rotor, diameter);
  return {
    diameter,
    mass,
    height: rotorHeight(rotor, diameter) ?? 0,
    price: nearestSize(rotor, diameter).price,
    stacked: stackedBy(build, "rotor", { ...housing, rotor, diameter }),
    burstSpeed: body && burstSpeedOf(body, diameter),
  };
}

function testedTipSpeeds(basis: RotorBasis): readonly [number, number] | null {
  const used = basis.points.filter(({ setAside }) => setAside === null);
  const speeds = used.map(({ rpm, diameter }) => tipSpeed(diameter ?? basis.testedDiameters[0], rpm * RPM));
  return speeds.length === 0 ? null : [Math.min(...speeds), Math.max(...speeds)];
}

/** Sizes that are corrected from one tested size stand together. */
function groups(basis: RotorBasis, sizes: readonly RotorSize[]): Map<string, [TestedAt | null, RotorSize[]]> {
  const found = new Map<string, [TestedAt | null, RotorSize[]]>();
  for (const size of sizes) {
    const correction = testedAt(basis, size.diameter);
    const key = JSON.stringify(correction);
    const group = found.get(key) ?? [correction, []];
    group[1].push(size);
    found.set(key, group);
  }
  return found;
}

function rotorOf(
  context: Context,
  { rotor: id, diameters }: Asked,
  at: string,
): readonly AdmittedRotor[] | string {
  const { book } = context;
  const rotor = findById(book.rotors, id)?.data;
  if (!rotor) return `The book has no rotor ${id}.`;
  if (rotor.kind === "propeller")
    return `${rotor.name} is an open propeller: choosing is for rotors in a duct.`;
  const basis = rotorBasis(book, id);
  if (basis.basis === "missing") return basis.missing.message;
  const { psi, lambda, phiMin, phiMax, testedDiameters } = basis;
  if (!lambda) return `The power of ${rotor.name} is not known: log the motor's current in its curve tests.`;
  const asked = diameters
    ? steppedValues(`${at}.diameters`, diameters)
    : rotor.sizes.map(({ diameter }) => diameter);
  const sizes = asked.map((diameter) => {
    const mass = rotorMass(rotor, diameter);
    return mass === null ? null : sizeOf(context, rotor, diameter, mass);
  });
  if (sizes.includes(null)) return `${rotor.name} has a size without a mass: weigh it, on the rotor's page.`;
  const curve = { id, basis: basis.basis, psi, lambda, phiMin, phiMax, testedDiameters };
  const weighed = sizes.filter((size) => size !== null);
  return [...groups(basis, weighed).values()].map(([sizeCorrection, group]) => ({
    ...curve,
    testedTipSpeeds: testedTipSpeeds(basis),
    sizeCorrection,
    sizes: group,
  }));
}

/** @returns the admitted rotor families, each size corrected from the tested one that is nearest to it */
export function admittedRotors(context: Context, asked: readonly Asked[]): AdmittedRotor[] {
  return admitted(context, "rotors", asked, (each, at) => rotorOf(context, each, at));
}
