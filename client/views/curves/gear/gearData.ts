import { type Book, findById, testsOf } from "../../../../shared/book/book.ts";
import { rideHeights } from "../../../../shared/book/readings/rideHeight.ts";
import { type TestedGear, testedGear } from "../../../../shared/book/stiffnessBasis.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import type { Source } from "../chosen.ts";

/** A height of the lip under a load. */
export interface HeightPoint extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: string | null;
  /** [N] */
  readonly load: number;
  /** [m] */
  readonly height: number;
}

export interface GearPage {
  readonly gear: StoredOf<"gears">;
  readonly tested: TestedGear;
  readonly tests: readonly StoredOf<"tests">[];
  readonly points: readonly HeightPoint[];
  /** builds that run on it */
  readonly builds: readonly StoredOf<"builds">[];
}

/** @returns a running gear with its ride-height tests and what they say; null where the book has no such gear */
export function gearPage(book: Book, id: string): GearPage | null {
  const gear = findById(book.gears, id);
  if (!gear) return null;
  const own = testsOf(book, "ride-height").filter(({ data }) => data.gear === id);
  const points = own.flatMap((test, index) =>
    rideHeights(test.data).map(({ load, height, row, setAside }) => ({
      key: `${test.id}#${row}`,
      testId: test.id,
      row,
      test: index,
      aside: setAside,
      load,
      height,
    })),
  );
  return {
    gear,
    tested: testedGear(book, id),
    tests: own.flatMap((test) => findById(book.tests, test.id) ?? []),
    points,
    builds: book.builds.filter(({ data }) => data.gear === id),
  };
}
