import { OutOfRangeError } from "../../numeric/errors.ts";
import { FLAG } from "./columns.ts";
import { keptTimeOf } from "./keptTime.ts";
import { writeDigits } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { runTime } from "./runTime.ts";
import { solveCombination } from "./solveCombination.ts";
import { createWork, writeCombination } from "./work.ts";

function checkIndex({ count }: Prepared, index: number): void {
  if (!(Number.isInteger(index) && index >= 0 && index < count))
    throw new OutOfRangeError("index", index, `a whole number, 0 to ${count - 1}`);
}

/**
 * How long one combination runs, whatever limits it breaks.
 *
 *     as {@link runTime}, the combination solved by itself
 *
 * @param prepared - from {@link prepare}
 * @param index - of the combination [-]
 * @returns time [s]; NaN where the motor does not turn or there is no answer
 * @throws {OutOfRangeError} on an index that counts no combination
 *
 * Valid as {@link runTime}
 */
export function timeAlone(prepared: Prepared, index: number): number {
  checkIndex(prepared, index);
  const work = createWork(prepared);
  writeCombination(prepared, work, index);
  const flags = solveCombination(prepared, work, index, 0);
  if (flags & (FLAG.noPoint | FLAG.unsolved)) return Number.NaN;
  const out = { time: Number.NaN, flag: 0 };
  runTime(prepared, work, index, flags, out);
  return out.time;
}

/**
 * How long a controller keeps one combination's wanted margin, whatever limits it breaks.
 *
 *     as {@link keptTimeOf}
 *
 * @param prepared - from {@link prepare}
 * @param index - of the combination [-]
 * @returns time [s]
 * @throws {OutOfRangeError} on an index that counts no combination
 *
 * Valid as {@link keptTimeOf}
 */
export function keptTimeAlone(prepared: Prepared, index: number): number {
  checkIndex(prepared, index);
  const digits = { motor: 0, sizedRotor: 0, pack: 0, duty: 0, fittedSkirt: 0 };
  writeDigits(prepared.radix, index, digits);
  return keptTimeOf(prepared, digits, index);
}
