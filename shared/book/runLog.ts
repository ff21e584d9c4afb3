import type { Build } from "../model/build.ts";
import type { RunLogTest } from "../model/tests/runLog.ts";
import type { Mode } from "../physics/hold/holdAt.ts";
import { type AnyPredictInput, predictAny } from "../physics/predictAny.ts";
import { runDown, type Sample } from "../physics/rundown.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, findById } from "./book.ts";
import { atTerminals, weatherOf } from "./pullPrediction.ts";
import type { Reading } from "./readings/reading.ts";
import { type Resolved, resolveBuild, solvable } from "./resolve.ts";
import { runInput } from "./runInput.ts";

type Outcome = RunLogTest["rows"][number]["outcome"];

/** One attitude of a drive in SI. */
export interface RunRow {
  readonly outcome: Outcome;
  /** θ [°] */
  readonly angle: number;
  readonly driving: boolean;
  /** at the pack's terminals [V]; null where not read */
  readonly voltage: number | null;
  /** null where not stated [-] */
  readonly charge: number | null;
  /** since it was switched on [s]; null where not read */
  readonly time: number | null;
}

/** Where the pack's state of a row is from: read, stated, counted down from a full pack by the time, or the build's own. */
export type RunFrom = "voltage" | "charge" | "time" | "build";

/** What the prediction says of one attitude of a drive. */
export interface RunCheck {
  /** of the state it was in; null where no suction is needed */
  readonly margin: number | null;
  /** what gives first */
  readonly governs: readonly Mode[];
  readonly holds: boolean;
  /** the drive did what was predicted; also where it was predicted to give, in another way */
  readonly agrees: boolean;
  readonly from: RunFrom;
}

const DEGREES = 180 / Math.PI;

/** @returns a run log's rows */
export function runRows(test: RunLogTest): Reading<RunRow>[] {
  return test.rows.map(({ outcome, angle, driving, voltage, charge, time, setAside }, row) => ({
    outcome,
    angle: toSI(angle, "angle") * DEGREES,
    // what stalls was driving
    driving: driving || outcome === "stalled",
    voltage: voltage ? toSI(voltage, "voltage") : null,
    charge: charge ? toSI(charge, "fraction") : null,
    time: time ? toSI(time, "time") : null,
    row,
    setAside: setAside ?? null,
  }));
}

/** Charge at a moment of a run that began with a full pack; that of its end for later ones. */
function chargeAt(samples: readonly Sample[], time: number): number | null {
  const after = samples.findIndex((sample) => sample.time >= time);
  if (after < 0) return samples.at(-1)?.charge ?? null;
  if (after === 0) return samples[0].charge;
  const [a, b] = [samples[after - 1], samples[after]];
  return a.charge + ((b.charge - a.charge) * (time - a.time)) / (b.time - a.time);
}

/** The pack's state in a row, and where it is from. */
function stateOf(row: RunRow, build: Build, samples: () => readonly Sample[]) {
  if (row.voltage !== null) return { charge: build.charge, from: "voltage" as const };
  if (row.charge !== null) return { charge: row.charge, from: "charge" as const };
  const counted = row.time === null ? null : chargeAt(samples(), row.time);
  if (counted !== null) return { charge: counted, from: "time" as const };
  return { charge: build.charge, from: "build" as const };
}

function checkOf(input: AnyPredictInput, row: RunRow, from: RunFrom): RunCheck {
  const [hold] = predictAny(input, [row.angle]).attitudes.filter(({ angle }) => angle === row.angle);
  const { margin, governs } = row.driving ? hold.driving : hold.parked;
  const holds = margin === null || margin >= 1;
  return { margin, governs, holds, agrees: (row.outcome === "held") === holds, from };
}

/** What is predicted for a run log, row by row. */
export interface RunChecks {
  /** in the rows' order; null where the build's parts don't say enough */
  readonly checks: readonly RunCheck[] | null;
  /** what the parts lack, in words */
  readonly missing: readonly string[];
}

/**
 * What was predicted for each attitude of a drive, on the day's air and at the voltage or charge that was read.
 *
 *     pack: as read at the terminals, else at the stated charge, else at the charge that a run from full has left by then, else at the build's
 *
 * @param book - the whole bench book
 * @param test - as stored
 * @returns margin and what gives first, row by row [-]
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function runChecks(book: Book, test: RunLogTest): RunChecks {
  const { cases, missing } = runCases(book, test);
  const checks = cases?.map(({ row, input, from }) => checkOf(input, row, from)) ?? null;
  return { checks, missing };
}

/** One attitude of a drive as the build then stood. */
export interface RunCase {
  readonly row: Reading<RunRow>;
  readonly build: Build;
  readonly resolved: Resolved;
  /** with the voltage that was read [SI] */
  readonly input: AnyPredictInput;
  readonly from: RunFrom;
}

/** @returns each attitude of a drive with the build as it then stood; null, and what the parts lack, where they don't say enough */
export function runCases(
  book: Book,
  test: RunLogTest,
): { readonly cases: readonly RunCase[] | null; readonly missing: readonly string[] } {
  const stored = findById(book.builds, test.build)?.data;
  if (!stored) return { cases: null, missing: ["Choose the build that was driven."] };
  const build: Build = test.air ? { ...stored, air: weatherOf(test) } : stored;
  const resolved = resolveBuild(book, build);
  if (!solvable(resolved)) return { cases: null, missing: resolved.missing.map(({ message }) => message) };
  let run: readonly Sample[] | null = null;
  const samples = () => {
    const full = { ...build, charge: 1 };
    const input = runInput(full, resolveBuild(book, full));
    run ??= input ? runDown(input).samples : [];
    return run;
  };
  const atCharge = new Map<number, Resolved>();
  const resolvedAt = (charge: number) => {
    const known = atCharge.get(charge) ?? resolveBuild(book, { ...build, charge });
    atCharge.set(charge, known);
    return known;
  };
  const cases = runRows(test).flatMap((row) => {
    const { charge, from } = stateOf(row, build, samples);
    const then = resolvedAt(charge);
    const input = solvable(then);
    const own = { ...build, charge };
    return input ? [{ row, build: own, resolved: then, input: atTerminals(input, row.voltage), from }] : [];
  });
  return { cases, missing: [] };
}
