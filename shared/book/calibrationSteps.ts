import type { CalibrationRequest } from "../fit/calibration.ts";
import { answerOrNull } from "../numeric/errors.ts";
import { type Book, findById } from "./book.ts";
import type { CalibratedBuild } from "./calibrated.ts";
import { calibrationToDo, pullRowsIn, pullTestsOn } from "./calibration.ts";
import { motorBasis } from "./motorBasis.ts";
import { rotorBasis } from "./rotorBasis.ts";
import type { Steps } from "./steps.ts";

/** {@link calibrationToDo}, the costly parts of it a step each; null as well on a number in the book that can't be. */
export function* calibrationSteps(book: Book, build: CalibratedBuild): Steps<CalibrationRequest | null> {
  const [skirt, surface] = [findById(book.skirts, build.skirt), findById(book.surfaces, build.surface)];
  if (!skirt || !surface) return null;
  const setting = { book, skirt, surface };
  const tests = pullTestsOn(setting);
  for (const motor of new Set(tests.map(({ data }) => data.motor))) {
    answerOrNull(() => motorBasis(book, motor));
    yield;
  }
  for (const rotor of new Set(tests.map(({ data }) => data.rotor))) {
    answerOrNull(() => rotorBasis(book, rotor));
    yield;
  }
  for (const test of tests) {
    answerOrNull(() => pullRowsIn(setting, test));
    yield;
  }
  return answerOrNull(() => calibrationToDo(book, build));
}
