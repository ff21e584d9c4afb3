import { UNSHOWN } from "../../../../shared/fit/twoPointFit.ts";
import { ESTIMATE_UNCERTAINTY } from "../../../../shared/physics/fanlaws/estimate.ts";
import { counted, inWords } from "../../../ui/count.ts";
import { capital, percent } from "../curveWords.ts";
import { type RotorFamily, readingsInUse } from "./family.ts";

/** How well the curve is known: the largest half-width of its mean's 95 % band within the tested range, over ψ with no flow. */
export type Sureness = number | null;

/** @returns the answer of a rotor's page, made from its tests */
export function rotorSentence(family: RotorFamily, sureness: Sureness): string {
  const { answer, rotor } = family;
  const { name } = rotor.data;
  if (answer.basis === "missing") return `The curve of ${name} is not known yet.`;
  if (answer.basis === "estimated")
    return `No curve test of ${name} counts yet: its curve is estimated from its shape, ±\u202f${percent(ESTIMATE_UNCERTAINTY)}.`;
  const tests = new Set(readingsInUse(family).map((reading) => reading.testId)).size;
  const from = `from ${counted(tests, "test")} at ${counted(answer.testedDiameters.length, "size")}`;
  const assumed = `±\u202f${percent(UNSHOWN)} is assumed`;
  if (answer.basis === "two-point")
    return `The curve of ${name} is based on two flows only, ${from}: ${assumed}.`;
  if (sureness === null)
    return `The curve of ${name} is drawn ${from}; its points leave no residual: ${assumed}.`;
  return `The curve of ${name} is known ${from} to ±\u202f${percent(sureness)} of blocked pressure.`;
}

export interface MissingInUnits {
  readonly count: number;
  readonly from: string;
  readonly to: string;
  readonly unit: string;
  /** at what speed and size the range is meant; empty where it is in coefficients */
  readonly at: string;
  readonly shrinks: number;
}

const HALVES = 0.5;

/** @returns which readings to take next and what they would do to the band, "Two more readings between 0.1 and 0.2 L/s would halve the band." */
export function missingSentence(missing: MissingInUnits | null): string {
  if (!missing)
    return "A few more readings would hardly narrow the band: the scatter of the readings limits it.";
  const { count, from, to, unit, at, shrinks } = missing;
  const readings = `${capital(inWords(count))} more ${count === 1 ? "reading" : "readings"}`;
  const place = from === to ? `at ${from}` : `between ${from} and ${to}`;
  const gain = shrinks <= HALVES ? gainOf(shrinks) : `cut the widest band by ${percent(1 - shrinks)}`;
  return `${readings} ${place}${unit === "" ? "" : ` ${unit}`}${at === "" ? "" : ` (${at})`} would ${gain}.`;
}

/** Narrower than this the band does more than halve. */
const FAR_BELOW_HALF = 0.4;

function gainOf(shrinks: number): string {
  return shrinks < FAR_BELOW_HALF
    ? `bring the widest band down to ${percent(shrinks)} of what it is`
    : "halve the widest band";
}
