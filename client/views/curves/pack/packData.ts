import { type Book, findById, type StoredTest, testsOf } from "../../../../shared/book/book.ts";
import { type PackAnswer, packBasis } from "../../../../shared/book/packBasis.ts";
import { dischargeReadings } from "../../../../shared/book/readings/discharge.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { wholeOf } from "../../../../shared/fit/dischargeFit.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { type CellLaw, cellResistance } from "../../../../shared/physics/cells/cell.ts";
import { openCircuitCurve } from "../../../../shared/physics/pack.ts";
import type { Source } from "../chosen.ts";

/** A reading of a discharge, of one cell. */
export interface PackPoint extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: string | null;
  /** z [-] */
  readonly charge: number;
  /** as read [V] */
  readonly voltage: number;
  /** [A] */
  readonly current: number;
  /** V + R·I [V] */
  readonly openCircuit: number;
  /** V less what curve and sag say [V]; null beyond the curve */
  readonly residual: number | null;
}

export interface PackPage {
  readonly pack: StoredOf<"packs">;
  readonly basis: PackAnswer;
  readonly tests: readonly StoredOf<"tests">[];
  readonly points: readonly PackPoint[];
}

type Cell = Omit<CellLaw, "curve"> & Parameters<typeof wholeOf>[1];

function pointsOf(
  test: StoredTest<"discharge">,
  index: number,
  pack: StoredOf<"packs">,
  cell: Cell,
  curve: ((charge: number) => number) | null,
): PackPoint[] {
  const rows = dischargeReadings(test.data, pack.data);
  const whole = wholeOf({ readings: inUse(rows), emptied: test.data.end === "empty" }, cell);
  return rows.map(({ drawn, voltage, current, row, setAside }) => {
    const charge = whole > 0 ? 1 - drawn / whole : 1;
    const inside = curve !== null && charge >= 0 && charge <= 1;
    const openCircuit = voltage + cellResistance(cell, charge) * current;
    return {
      key: `${test.id}#${row}`,
      testId: test.id,
      row,
      test: index,
      aside: setAside,
      charge,
      voltage,
      current,
      openCircuit,
      residual: inside ? openCircuit - curve(charge) : null,
    };
  });
}

/** @returns a pack, its cell and what it rests on, its discharge readings; null where the book has no such pack */
export function packPage(book: Book, packId: string): PackPage | null {
  const pack = findById(book.packs, packId);
  const basis = packBasis(book, packId);
  if (!pack || !basis) return null;
  const discharges = testsOf(book, "discharge").filter(({ data }) => data.pack === packId);
  const tests = discharges.flatMap(({ id }) => findById(book.tests, id) ?? []);
  const resistanceFrom = (basis.basis === "missing" ? null : basis.fit?.resistanceFrom) ?? "known";
  const cell = { ...(basis.basis === "missing" ? pack.data.cell : basis.cell), resistanceFrom };
  const curve = basis.basis === "missing" ? null : openCircuitCurve(basis.cell.curve);
  const points = discharges.flatMap((test, index) => pointsOf(test, index, pack, cell, curve));
  return { pack, basis, tests, points };
}
