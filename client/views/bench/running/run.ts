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
import { attempt, NOTHING_YET, type RowName, type Running } from "./result.ts";
import { runRideHeight } from "./rideHeight.ts";
import { runRunLog } from "./runLog.ts";
import { runThrust } from "./thrust.ts";
import { runWeighIn } from "./weighIn.ts";

const says = ({ errors }: ReadDraft, start: string): boolean =>
  [...errors.keys()].some((path) => path.startsWith(start));

function resultOf(test: InlinedTest, rows: readonly RowName[], book: Book): Running {
  switch (test.kind) {
    case "curve":
      return runCurve(test, rows, book);
    case "pull":
      return runPull(test, rows, book);
    case "motor":
      return runMotor(test, rows);
    case "leak":
      return runLeak(test, rows);
    case "friction":
      return runFriction(test, rows);
    case "discharge":
      return runDischarge(test, rows, book);
    case "thrust":
      return runThrust(test, rows, book);
    case "ride-height":
      return runRideHeight(test, rows);
    case "weigh-in":
      return runWeighIn(test, rows, book);
    case "run-log":
      return runRunLog(test, rows, book);
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
  const { data, rowKeys, rowNumbers } = read;
  const names = rowKeys.map((key, i): RowName => ({ key, number: rowNumbers[i] }));
  const test = (says(read, "air.") ? { ...data, air: undefined } : data) as unknown as BenchTest;
  // a half-typed circumstance may be out of all range: that is said, the form goes on
  const { found, next } = attempt(() => resultOf(inlined(book, test), names, book));
  return withOddUnits(found ?? { ...NOTHING_YET, next }, test, rowKeys);
}
