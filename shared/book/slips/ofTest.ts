import type { BenchTest, InlinedTest } from "../../model/tests/index.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import type { Book } from "../book.ts";
import { inlined } from "../named.ts";
import { slipsOfCurve } from "./curve.ts";
import { slipsOfDischarge } from "./discharge.ts";
import { slipsOfFriction } from "./friction.ts";
import { slipsOfLeak } from "./leak.ts";
import { slipsOfMotor } from "./motor.ts";
import { firstOfEach } from "./ofPart.ts";
import { slipsOfPull } from "./pull.ts";
import { slipsOfRideHeight } from "./rideHeight.ts";
import type { Slip } from "./slip.ts";
import { slipsOfThrust } from "./thrust.ts";
import { slipsOfWeighIn } from "./weighIn.ts";

function ofKind(book: Book, test: InlinedTest): Slip[] {
  switch (test.kind) {
    case "pull":
      return slipsOfPull(book, test);
    case "curve":
      return slipsOfCurve(book, test);
    case "motor":
      return slipsOfMotor(book, test);
    case "leak":
      return slipsOfLeak(book, test);
    case "friction":
      return slipsOfFriction(book, test);
    case "thrust":
      return slipsOfThrust(book, test);
    case "discharge":
      return slipsOfDischarge(book, test);
    case "ride-height":
      return slipsOfRideHeight(book, test);
    case "weigh-in":
      return slipsOfWeighIn(book, test);
    // an outcome is no number, and its attitude may be any
    case "run-log":
      return [];
  }
}

/**
 * Readings of a test that may be slips of the unit or of a digit: far from what the prediction, the book or the trade expects.
 *
 * @param book - what the test is compared with
 * @param test - as it would be stored
 * @returns what to ask about before it is saved; rows that are set aside are never asked about
 */
export function slipsOfTest(book: Book, test: BenchTest): Slip[] {
  // a book that can't answer expects nothing
  return firstOfEach(answerOrNull(() => ofKind(book, inlined(book, test))) ?? []);
}
