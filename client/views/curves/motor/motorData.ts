import { type Book, findById } from "../../../../shared/book/book.ts";
import { type MotorBasis, motorBasis } from "../../../../shared/book/motorBasis.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { RPM, torqueConstant } from "../../../../shared/physics/motor.ts";
import type { Source } from "../chosen.ts";

export interface MotorPoint extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: string | null;
  readonly rpm: number;
  readonly voltage: number;
  readonly current: number;
  readonly noLoad: boolean;
  /** false: part throttle, where the motor's own voltage isn't known */
  readonly fullThrottle: boolean;
  /** V − R·I, what is left for the back-EMF [V] */
  readonly backEmf: number;
  /** V − (R·I + k_e·ω) [V] */
  readonly residual: number;
}

export interface MotorPage {
  readonly motor: StoredOf<"motors">;
  readonly basis: MotorBasis;
  readonly tests: readonly StoredOf<"tests">[];
  readonly points: readonly MotorPoint[];
}

/** @returns a motor, its constants and what they rest on; null where the book has no such motor */
export function motorPage(book: Book, motorId: string): MotorPage | null {
  const motor = findById(book.motors, motorId);
  const basis = motorBasis(book, motorId);
  if (!motor || !basis) return null;
  const tests = book.tests.filter((test) => test.data.kind === "motor" && test.data.motor === motorId);
  const { kv, resistance } = basis.constants;
  const perSpeed = torqueConstant(kv);
  const points = basis.rows.map((row) => {
    const backEmf = row.voltage - resistance * row.current;
    return {
      key: `${row.testId}#${row.row}`,
      testId: row.testId,
      row: row.row,
      test: tests.findIndex((test) => test.id === row.testId),
      aside: row.setAside,
      rpm: row.rpm,
      voltage: row.voltage,
      current: row.current,
      noLoad: row.noLoad,
      fullThrottle: row.throttle === 1,
      backEmf,
      residual: backEmf - perSpeed * RPM * row.rpm,
    };
  });
  return { motor, basis, tests, points };
}
