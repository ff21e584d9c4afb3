import type { Book } from "#shared/book/book.ts";
import { demoBook } from "./demoBook.ts";

type Tests = Book["tests"];
const KINDS_OF_FRICTION = ["friction", "pull"];

/** @returns the bench with no word on the wheels' friction: none stated, no tilt board, no pull to calibrate by */
export function withoutFriction(book: Book): Book {
  return {
    ...book,
    tests: book.tests.filter(({ data }) => !KINDS_OF_FRICTION.includes(data.kind)),
    surfaces: book.surfaces.map((surface) => {
      const { wheelFriction: _stated, ...data } = surface.data;
      return { ...surface, data };
    }),
  };
}

/** @returns the bench with no motor named in its curve and thrust tests: λ and C_P stay unknown */
export function withoutPower(book: Book): Book {
  const tests = book.tests.map((test) =>
    test.data.kind === "curve" || test.data.kind === "thrust"
      ? { ...test, data: { ...test.data, motor: null } }
      : test,
  );
  return { ...book, tests: tests as Tests };
}

/** @returns the bench with packs of no curve, no chemistry and no discharge test */
export function withoutCell(book: Book): Book {
  return {
    ...book,
    tests: book.tests.filter(({ data }) => data.kind !== "discharge"),
    packs: book.packs.map((pack) => {
      const { curve: _stated, chemistry: _published, ...cell } = pack.data.cell;
      return { ...pack, data: { ...pack.data, cell } };
    }),
  };
}

/** @returns the demo's bench book, changed */
export function demoWithout(...changes: readonly ((book: Book) => Book)[]): Book {
  return changes.reduce((book, change) => change(book), demoBook());
}
