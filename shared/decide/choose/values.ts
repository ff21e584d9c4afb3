import { OutOfRangeError } from "../../numeric/errors.ts";
import { type Chunk, type Column, STORED, type Stored } from "./columns.ts";
import { rotorFactorOf } from "./limits.ts";
import { type Digits, writeDigits } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { type Summed, sumAt } from "./sums.ts";

/** Solved combinations, chunk by chunk in the order of their indices, from 0 up without a hole. */
export type Results = readonly Chunk[];

/**
 * Chunks in whatever order they came, put in the order of their indices.
 *
 *     sorted by their first index
 *
 * @param chunks - each combination in one of them [-]
 * @returns the results, SI [-]
 * @throws {RangeError} where combinations are missing between two chunks, or are there twice
 *
 * Valid for chunks of one question
 */
export function gathered(chunks: readonly Chunk[]): Results {
  const sorted = [...chunks].sort((a, b) => a.from - b.from);
  let next = 0;
  for (const { from, count } of sorted) {
    if (from !== next)
      throw new RangeError(`a chunk begins at combination ${from}, where ${next} was to come`);
    next = from + count;
  }
  return sorted;
}

/** @returns how many combinations were solved [-] */
export function solvedCount(results: Results): number {
  return results.reduce((sum, { count }) => sum + count, 0);
}

/**
 * Where a combination is stored.
 *
 *     the chunk whose range holds the index
 *
 * @param results - solved combinations
 * @param index - of the combination [-]
 * @returns chunk and place in it [-]
 * @throws {OutOfRangeError} on an index that none holds
 *
 * Valid for any results
 */
export function placeIn(results: Results, index: number): { readonly chunk: Chunk; readonly at: number } {
  const chunk = results.find(({ from, count }) => index >= from && index < from + count);
  if (!chunk) throw new OutOfRangeError("index", index, "the index of a solved combination");
  return { chunk, at: index - chunk.from };
}

const isStored = (column: Column): column is Stored => STORED.some((stored) => stored === column);

function derivedAt(
  prepared: Prepared,
  column: Summed | "rotorFactor",
  speed: number,
  digits: Digits,
): number {
  if (column === "rotorFactor") return rotorFactorOf(prepared, digits.sizedRotor, speed);
  return sumAt(prepared.sums[column], digits);
}

/**
 * One column of all combinations.
 *
 *     stored, or from the parts: margin = the smaller of parked and driving
 *
 * @param prepared - the question
 * @param results - solved combinations
 * @param column - which
 * @returns its values by index [SI]; infinite where no suction is needed, NaN where there is none
 *
 * Valid for any results of the question
 */
export function columnOf(prepared: Prepared, results: Results, column: Column): Float64Array {
  const values = new Float64Array(solvedCount(results));
  const digits: Digits = { motor: 0, sizedRotor: 0, pack: 0, duty: 0, fittedSkirt: 0 };
  for (const chunk of results) {
    if (isStored(column)) values.set(chunk[column], chunk.from);
    else
      for (let i = 0; i < chunk.count; i++) {
        const at = chunk.from + i;
        if (column === "margin") {
          values[at] = Math.min(chunk.parked[i], chunk.driving[i]);
          continue;
        }
        writeDigits(prepared.radix, at, digits);
        values[at] = derivedAt(prepared, column, chunk.speed[i], digits);
      }
  }
  return values;
}

/**
 * One column of some combinations.
 *
 *     as {@link columnOf}
 *
 * @param prepared - the question
 * @param results - solved combinations
 * @param column - which
 * @param indices - of the combinations, fastest where they rise [-]
 * @returns its values in the order of the indices [SI]
 *
 * Valid as {@link columnOf}
 */
export function columnAt(
  prepared: Prepared,
  results: Results,
  column: Column,
  indices: Uint32Array,
): Float64Array {
  const digits: Digits = { motor: 0, sizedRotor: 0, pack: 0, duty: 0, fittedSkirt: 0 };
  const values = new Float64Array(indices.length);
  let chunk = results[0];
  for (let i = 0; i < indices.length; i++) {
    const index = indices[i];
    if (index < chunk.from || index >= chunk.from + chunk.count) ({ chunk } = placeIn(results, index));
    const at = index - chunk.from;
    if (isStored(column)) values[i] = chunk[column][at];
    else if (column === "margin") values[i] = Math.min(chunk.parked[at], chunk.driving[at]);
    else {
      writeDigits(prepared.radix, index, digits);
      values[i] = derivedAt(prepared, column, chunk.speed[at], digits);
    }
  }
  return values;
}

/** @returns indices of the combinations that break no limit, rising */
export function meetingCombinations(results: Results): Uint32Array {
  const found: number[] = [];
  for (const { from, count, broken } of results)
    for (let i = 0; i < count; i++) if (broken[i] === 0) found.push(from + i);
  return Uint32Array.from(found);
}
