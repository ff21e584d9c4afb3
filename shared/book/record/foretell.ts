import { FORETOLD_KINDS, type Foretold } from "../../model/api/record.ts";
import type { BenchTest, InlinedTest } from "../../model/tests/index.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import type { Book } from "../book.ts";
import { inlined } from "../named.ts";
import { foretellLeak } from "./foretellLeak.ts";
import { foretellPull } from "./foretellPull.ts";
import { foretellRun } from "./foretellRun.ts";
import { foretellCurveSpeed, foretellThrustSpeed } from "./foretellSpeed.ts";
import { unchangedRows } from "./unchangedRows.ts";

/** Of a test of thousands of rows the first are predicted: each takes some thousandths of a second. */
const MOST_ROWS = 100;

function rowsOf(book: Book, test: InlinedTest, wanted: ReadonlySet<number>): Omit<Foretold, "basis">[] {
  if (test.kind === "pull") return foretellPull(book, test, wanted);
  if (test.kind === "leak") return foretellLeak(book, test, wanted);
  if (test.kind === "run-log") return foretellRun(book, test, wanted);
  if (test.kind === "curve") return foretellCurveSpeed(book, test, wanted);
  if (test.kind === "thrust") return foretellThrustSpeed(book, test, wanted);
  return [];
}

const named = (book: Book, test: BenchTest): InlinedTest => inlined(book, test) as InlinedTest;

/** The book as if some rows of a test, or all of it, were never logged. */
function withOnly(book: Book, id: string, test: BenchTest, rows: readonly number[]): Book {
  if (rows.length === 0) return { ...book, tests: book.tests.filter((each) => each.id !== id) };
  const left = { ...test, rows: rows.map((row) => test.rows[row]) } as BenchTest;
  return { ...book, tests: book.tests.map((each) => (each.id === id ? { ...each, data: left } : each)) };
}

/** A test as it was written, with what was kept of it before. */
export interface Logged {
  readonly id: string;
  readonly test: BenchTest;
  /** what it said before; null: it is new */
  readonly before: BenchTest | null;
  /** kept with it so far */
  readonly kept: readonly Foretold[];
  /** date of the writing, YYYY-MM-DD: what was measured days ago is predicted afterwards */
  readonly today: string;
}

const DAY = 86_400_000;
/** A test this much older than its logging may have told others by now [days]. */
const OLD = 2;

/**
 * What is predicted for a test as it is logged or corrected, by the book of that moment.
 *
 *     rows that stay as they were keep their prediction; the others are predicted as if they weren't there
 *
 * @param book - with the test as written
 * @param logged - the test, what was kept of it, the day
 * @returns a prediction of each row of which one can be made, by row; a correction, or a test of days ago, marked "afterwards"
 *
 * Valid for the first hundred rows. Source: docs/method/record.md
 */
export function foretell(book: Book, { id, test, before, kept, today }: Logged): Foretold[] {
  if (!FORETOLD_KINDS.includes(test.kind)) return [];
  const same = before ? unchangedRows(before, test) : new Map<number, number>();
  const stay = kept.flatMap((each) => {
    const row = [...same].find(([, old]) => old === each.row)?.[0];
    return row === undefined ? [] : [{ ...each, row }];
  });
  const all = test.rows.map((_, row) => row).slice(0, MOST_ROWS);
  const wanted = new Set(all.filter((row) => !same.has(row)));
  if (wanted.size === 0) return stay;
  const known = withOnly(book, id, test, [...same.keys()]);
  const made = answerOrNull(() => rowsOf(known, named(book, test), wanted)) ?? [];
  const isOld = Date.parse(today) - Date.parse(test.date) > OLD * DAY;
  const isNew = (row: number) => !isOld && row >= (before?.rows.length ?? 0);
  const basis = (row: number) => (isNew(row) ? "then" : "afterwards");
  return [...stay, ...made.map((each) => ({ ...each, basis: basis(each.row) }) as const)].sort(
    (a, b) => a.row - b.row,
  );
}

/**
 * What would be predicted for a test that no prediction is kept of, as if it weren't there.
 *
 * @param book - that holds it
 * @param id - of the test
 * @returns a prediction of each row of which one can be made, marked "afterwards"
 *
 * Valid for the first hundred rows. Source: docs/method/record.md
 */
export function foretellAfterwards(book: Book, id: string): Foretold[] {
  const test = book.tests.find((each) => each.id === id)?.data;
  if (!test) return [];
  const all = new Set(test.rows.map((_, row) => row).slice(0, MOST_ROWS));
  const made = answerOrNull(() => rowsOf(withOnly(book, id, test, []), named(book, test), all)) ?? [];
  return made.map((each) => ({ ...each, basis: "afterwards" }));
}
