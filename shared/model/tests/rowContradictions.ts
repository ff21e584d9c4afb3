import type { DimensionName } from "../../units/dimensions.ts";
import { type TypedQuantity, toSI } from "../../units/quantity.ts";
import type { FrictionTest } from "./friction.ts";
import type { BenchTest } from "./index.ts";
import type { PullTest } from "./pull.ts";

/** A row whose readings can't be true together. */
export interface RowContradiction {
  /** index into the test's rows */
  readonly row: number;
  /** the reading that speaks against the other */
  readonly column: "letGo" | "slid";
  /** "let go at 1300 g, below the 1400 g it held", in the units as typed */
  readonly what: string;
}

const typed = ({ value, unit }: TypedQuantity): string =>
  unit === "°" ? `${value}°` : `${value}\u202f${unit}`;

/** Rounding of one number in two units: 1.4 kg is 1400 g. */
const SAME = 1e-9;

const isBelow = (a: TypedQuantity, b: TypedQuantity, name: DimensionName): boolean => {
  const [low, high] = [toSI(a, name), toSI(b, name)];
  return low < high - SAME * Math.abs(high);
};

/** @returns why a pull can't have been so: it let go below what it held; null where it can, or is set aside */
export function pullContradiction({ held, letGo, setAside }: PullTest["rows"][number]): string | null {
  if (setAside !== undefined || !letGo || !isBelow(letGo, held, "load")) return null;
  return `let go at ${typed(letGo)}, below the ${typed(held)} it held`;
}

/** @returns why a slide can't have been so: it held steeper than it slid; null where it can, or is set aside */
export function slideContradiction({ held, slid, setAside }: FrictionTest["rows"][number]): string | null {
  if (setAside !== undefined || !held || !slid || !isBelow(slid, held, "angle")) return null;
  return `slid at ${typed(slid)}, flatter than the ${typed(held)} at which it held`;
}

/** @returns every row of a test that contradicts itself and is not set aside */
export function rowContradictions(test: Pick<BenchTest, "kind" | "rows">): RowContradiction[] {
  if (test.kind === "pull")
    return (test as PullTest).rows.flatMap((each, row) => {
      const what = pullContradiction(each);
      return what === null ? [] : [{ row, column: "letGo" as const, what }];
    });
  if (test.kind !== "friction") return [];
  return (test as FrictionTest).rows.flatMap((each, row) => {
    const what = slideContradiction(each);
    return what === null ? [] : [{ row, column: "slid" as const, what }];
  });
}

/** @returns what is said of such a row, and what to do about it */
export function contradictionSentence({ row, what }: Pick<RowContradiction, "row" | "what">): string {
  return `Row ${row + 1}: ${what}. Correct one of them, or set the row aside.`;
}
