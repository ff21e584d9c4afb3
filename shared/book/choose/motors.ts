import type { TriedMotor } from "../../decide/choose/problem.ts";
import { findById } from "../book.ts";
import { stackedBy } from "../fitUp/stackedBy.ts";
import { motorAnswer } from "../motorBasis.ts";
import { type Context, tried } from "./context.ts";

function motorOf({ book, build, housing }: Context, id: string): readonly TriedMotor[] | string {
  const record = findById(book.motors, id);
  const basis = motorAnswer(book, id);
  if (!record || !basis) return `The book has no motor ${id}.`;
  if (basis.basis === "missing") return basis.missing.message;
  const { name, mass, length, price, windingLimit, maxCurrent, ratedVoltage } = record.data;
  if (mass === undefined) return `${name} has no mass: weigh it, on the motor's page.`;
  return [
    {
      id,
      mass,
      height: length,
      price,
      stacked: stackedBy(build, "motor", { ...housing, motor: record.data }),
      ...basis.constants,
      thermalResistance: basis.thermal.thermalResistance,
      windingLimit: windingLimit ?? null,
      maxCurrent: maxCurrent ?? null,
      ratedVoltage: ratedVoltage ?? null,
    },
  ];
}

/** @returns the motors to try, by their tests where there are any */
export function triedMotors(context: Context, ids: readonly string[]): TriedMotor[] {
  return tried(context, "motors", ids, (id) => motorOf(context, id));
}
