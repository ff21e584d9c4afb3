import { driftOverRange } from "../../../../shared/fit/propellerBands.ts";
import type { PropellerFit } from "../../../../shared/fit/propellerFit.ts";
import { decimalsFor, formatFixed } from "../../../../shared/units/format.ts";
import { counted } from "../../../ui/count.ts";
import { percent } from "../curveWords.ts";
import type { PropellerPage, Which } from "./propellerData.ts";

const DIGITS = 3;

/** @returns a coefficient at the reference, with its standard error where one is known: "0.1303 ± 0.0007" */
export function coefficientText(fit: PropellerFit, which: Which): string {
  const line = fit[which];
  const error = fit.standardErrors[which];
  if (!line) return "not known";
  if (error === null || !(error > 0)) return formatFixed(line[0], decimalsFor(line[0], DIGITS));
  const decimals = decimalsFor(error, 1);
  return `${formatFixed(line[0], decimals)} ± ${formatFixed(error, decimals)}`;
}

/** @returns how a coefficient changes from the slowest to the fastest reading: "rises by 7.2 %", "shows no drift" */
export function driftText(fit: PropellerFit, which: Which): string {
  const drift = driftOverRange(fit, which);
  if (drift === null) return "is not known";
  if (drift === 0) return "shows no drift";
  return `${drift > 0 ? "rises" : "falls"} by ${percent(Math.abs(drift))}`;
}

/** @returns the answer of a propeller's page, made from its tests */
export function propellerSentence({ rotor, fit, tests, readings }: PropellerPage): string {
  const { name } = rotor.data;
  if (tests.length === 0) return `What ${name} pushes is not known yet.`;
  if (!fit) return `The thrust tests of ${name} give no coefficients yet.`;
  const used = readings.filter((reading) => reading.aside === null).length;
  const power = fit.power ? ` and C_P ${coefficientText(fit, "power")}` : "";
  return `${name} has C_T ${coefficientText(fit, "thrust")}${power}, from ${counted(used, "reading")} of ${counted(tests.length, "test")}.`;
}
