import type { Book } from "./book.ts";

type Test = Book["tests"][number];

const compared = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Below 0 where the first was made later, or of one day was entered later. */
const byDay = (a: Test, b: Test): number =>
  compared(b.data.date, a.data.date) || compared(b.createdAt, a.createdAt) || compared(b.id, a.id);

/** @returns the tests in the order that lists have them: the newest day first, of one day the last entered first */
export const newestFirst = (tests: Book["tests"]): Test[] => tests.toSorted(byDay);

/** @returns the leak and curve tests that used a plate, the newest first */
export const withPlate = (tests: Book["tests"]): Test[] =>
  newestFirst(
    tests.filter(
      ({ data }) =>
        (data.kind === "leak" || data.kind === "curve") && data.flowFrom === "bleed-plate" && data.plate,
    ),
  );
