import { fitThrottleOffset, type ThrottleOffset } from "../fit/throttleOffset.ts";
import { answerOrNull } from "../numeric/errors.ts";
import { type MotorConstants, RPM, torqueConstant } from "../physics/motor.ts";
import { dutyFromReading } from "../physics/pack.ts";
import type { MotorReading } from "./readings/motor.ts";
import { inUse, type Reading } from "./readings/reading.ts";

/** A sweep reaches below full throttle. */
const FULL = 1;

/**
 * Where a throttle begins to turn a motor, by the rows of its tests at part throttle.
 *
 * @param rows - of the motor's tests [V, A, rpm], those set aside left out
 * @param constants - of the motor [rpm/V, Ω], which give the duty of each row
 * @returns the offset [-]; null without a sweep: rows at three throttles or more, one of them below full
 */
export function throttleOffset(
  rows: readonly Reading<MotorReading>[],
  constants: Pick<MotorConstants, "kv" | "resistance">,
): ThrottleOffset | null {
  const used = inUse(rows).filter(({ voltage, rpm }) => voltage > 0 && rpm > 0);
  if (!used.some(({ throttle }) => throttle < FULL)) return null;
  const perSpeed = torqueConstant(constants.kv);
  const points = used.map(({ voltage, current, rpm, throttle }) => ({
    command: throttle,
    response: dutyFromReading({ voltage, current, speed: rpm * RPM }, constants.resistance, perSpeed),
  }));
  return answerOrNull(() => fitThrottleOffset(points));
}

/** @returns the offset that commands are read with, 0 where no sweep shows one or it lies below 0 [-] */
export function offsetInUse(throttle: ThrottleOffset | null | undefined): number {
  return Math.max(0, throttle?.offset ?? 0);
}
