import type { Book } from "../../../../shared/book/book.ts";
import { inlined } from "../../../../shared/book/named.ts";
import type { BenchTest, InlinedTest } from "../../../../shared/model/tests/index.ts";
import { KINDS } from "../record/kinds.ts";
import type { ReadDraft } from "../record/readDraft.ts";
import { runCurve } from "./curve.ts";
import { runDischarge } from "./discharge.ts";
import { runFriction } from "./friction.ts";
import { runLeak } from "./leak.ts";
import { runMotor } from "./motor.ts";
import { oddUnits } from "./oddUnits.ts";
import { runPull } from "./pull.ts";
import { attempt, NOTHING_YET, type Running } from "./result.ts";
import { runRideHeight } from "./rideHeight.ts";
import { runThrust } from "./thrust.ts";

const says = ({ errors }: ReadDraft, start: string): boolean =>
  [...errors.keys()].some((path) => path.startsWith(start));

function resultOf(test: InlinedTest, rowKeys: readonly number[], book: Book): Running {
  switch (test.kind) {
    case "curve":
      return runCurve(test, rowKeys, book);
    case "pull":
      return runPull(test, rowKeys, book);
    case "motor":
      return runMotor(test, rowKeys);
    case "leak":
      return runLeak(test, rowKeys);
    case "friction":
      return runFriction(test, rowKeys);
    case "discharge":
      return runDischarge(test, rowKeys, book);
    case "thrust":
      return runThrust(test, rowKeys, book);
    case "ride-height":
      return runRideHeight(test, rowKeys);
  }
}

/** Puts readings whose unit looks like a slip beside their rows, and in front of the other notes. */
function withOddUnits(running: Running, test: BenchTest, rowKeys: readonly number[]): Running {
  const odd = oddUnits(test.rows, rowKeys, KINDS[test.kind].columns);
  if (odd.length === 0) return running;
  const byRow = new Map(running.byRow);
  for (const { key, message } of odd) byRow.set(key, message);
  return { ...running, byRow, notes: [...odd.map(({ message }) => message), ...running.notes] };
}

/** What a half-typed test says so far. Only rows that can be read are in it; fields above them may be missing. */
export function runningResult(read: ReadDraft, book: Book): Running {
  if (says(read, "plate"))
    return { ...NOTHING_YET, next: "Describe the bleed plate's holes: they are the flow meter." };
  const { data, rowKeys } = read;
  const test = (says(read, "air.") ? { ...data, air: undefined } : data) as unknown as BenchTest;
  // a half-typed circumstance may be out of all range: that is said, the form goes on
  const { found, next } = attempt(() => resultOf(inlined(book, test), rowKeys, book));
  return withOddUnits(found ?? { ...NOTHING_YET, next }, test, rowKeys);
}
