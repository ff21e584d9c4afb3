import type { MotorFrame, SizeBuild } from "../../decide/size/input.ts";
import type { Build } from "../../model/build.ts";
import { cellAtVoltage } from "../../physics/cells/cell.ts";
import { torqueConstant } from "../../physics/motor.ts";
import type { RundownInput } from "../../physics/rundown.ts";
import { type Book, findById } from "../book.ts";
import { motorBasis } from "../motorBasis.ts";
import { resolveBuild, solvable } from "../resolve.ts";
import { runInput } from "../runInput.ts";
import { correctionAt } from "../testedSizes.ts";
import { type Families, type Family, familiesOf, type RotorKind } from "./families.ts";
import { sizableBuild } from "./sizable.ts";

/** What of a question stays as it is while families and sizes are tried. */
export type SideNumbers = Omit<SizeBuild, "rotor" | "rotorAt">;

/** One way to press a vehicle on, by rotors in a duct or by open propellers, and the families that could do it. */
export interface Side extends Families {
  readonly kind: RotorKind;
  /** a stored build with this kind of rotor, its size and motor still to be chosen */
  readonly build: Build;
  readonly numbers: SideNumbers;
  /** the same build with its cell */
  readonly run: RundownInput;
}

/** What a side is asked with. */
export interface SideAsked {
  /** whose strength the motor has, by identifier */
  readonly motor: string;
  /** of one cell at rest [V] */
  readonly cellVoltage: number;
}

/** @returns how strong a motor of the book is, whatever it is wound for; null where its constants aren't known */
export function motorFrame(book: Book, id: string): MotorFrame | null {
  const basis = motorBasis(book, id);
  if (!basis) return null;
  const { kv, resistance, frictionTorque, viscousTorque } = basis.constants;
  const motorConstant = torqueConstant(kv) / Math.sqrt(resistance);
  return { motorConstant, frictionTorque, viscousTorque, thermalResistance: basis.thermal.thermalResistance };
}

/** The build with the other kind of rotor: an open propeller leaves the skirt at home. */
function asKind(book: Book, build: Build, kind: RotorKind): Build {
  const own = findById(book.rotors, build.rotor)?.data.kind ?? "ducted";
  if (own === kind) return build;
  const { rotors } = book;
  const first = rotors.find(({ data }) => data.kind === kind && !data.retired)?.id ?? build.rotor;
  return { ...build, rotor: first, skirt: kind === "propeller" ? null : build.skirt };
}

/**
 * One way to press a build's vehicle on, made into numbers.
 *
 * @param book - the whole bench book, with what is typed beside it
 * @param stored - the build whose need it is
 * @param kind - of rotor
 * @param asked - motor as strong as the one wanted, cell voltage [V]
 * @returns numbers [SI] and families; null where the build has no numbers with that kind: no family, no skirt for a duct, no constants of the motor
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function sideOf(book: Book, stored: Build, kind: RotorKind, asked: SideAsked): Side | null {
  const motor = motorFrame(book, asked.motor);
  const build = sizableBuild(book, asKind(book, stored, kind), asked.motor);
  if (!motor || findById(book.rotors, build.rotor)?.data.kind !== kind) return null;
  if (kind === "ducted" && build.skirt === null) return null;
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  const run = runInput(build, resolved);
  if (!input || !run) return null;
  const { air, supply, vehicle, pack } = input;
  return {
    kind,
    build,
    run,
    numbers: {
      air,
      supply,
      vehicle,
      skirt: "skirt" in input ? input.skirt : null,
      pack: {
        ...pack,
        openCircuitVoltage: asked.cellVoltage,
        cellResistance: cellAtVoltage(run.pack.cell, asked.cellVoltage).resistance,
      },
      motor,
    },
    ...familiesOf(book, kind, stored.rotor),
  };
}

/** @returns a family as sizing takes it: with the size correction of the nearest tested size at every other [m] */
export function sizeBuild(numbers: SideNumbers, { rotor, sizes }: Family): SizeBuild {
  if ("thrust" in rotor) return { ...numbers, rotor };
  const rotorAt = (diameter: number) => ({
    ...rotor,
    diameter,
    sizeCorrection: correctionAt(sizes, diameter),
  });
  return { ...numbers, rotor, rotorAt };
}
