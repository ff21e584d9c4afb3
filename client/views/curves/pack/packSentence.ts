import { figureIn, formatFixed, formatQuantity, withUnit } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import type { PackPage } from "./packData.ts";

const DECIMALS = 2;

/** @returns what is known of a pack's voltage by charge, one sentence */
export function packSentence({ pack, basis }: PackPage): string {
  const { name } = pack.data;
  if (basis.basis === "missing") return `What voltage ${name} gives at which charge is not known.`;
  const { curve } = basis.cell;
  const [empty, full] = [curve[0][1], curve[curve.length - 1][1]].map((each) => formatFixed(each, DECIMALS));
  const range = `from ${full} to ${empty}\u202fV`;
  if (basis.basis === "chemistry")
    return `A cell of ${name} is taken to fall ${range}, by a published curve of its chemistry.`;
  if (basis.basis === "stated") return `A cell of ${name} falls ${range}, as stated.`;
  return `A cell of ${name} gives ${formatQuantity(basis.cell.capacity, "charge")} and falls ${range} at rest.`;
}

/** @returns R of a cell with its standard error where a test tells it */
export function cellResistanceText({ pack, basis }: PackPage): string {
  const fit = basis.basis === "missing" ? null : basis.fit;
  if (!fit) return formatQuantity(pack.data.cell.resistance, "resistance");
  const value = figureIn(fit.resistance, "smallResistance", 1);
  if (fit.resistanceError === null) return withUnit(value, unitOf("smallResistance"));
  return `${value} ± ${formatQuantity(fit.resistanceError, "smallResistance", { decimals: 1 })}`;
}

/** @returns what to measure next, in words */
export function packMissing({ tests, basis }: PackPage): string {
  if (basis.basis !== "measured") {
    if (tests.length === 0)
      return "A discharge test: start full, read voltage and current at ten or more charges, rest a minute now and then, end at the cell's minimum.";
    const said = basis.basis === "missing" ? basis.missing.message : basis.notes[0]?.message;
    return said ?? "Every reading of the discharge tests is set aside.";
  }
  const { resistanceFrom, capacityFrom, resistanceError, resistance } = basis.fit ?? {
    resistanceFrom: "known",
    capacityFrom: "known",
    resistanceError: null,
    resistance: 0,
  };
  if (resistanceFrom === "known")
    return "Rests: with a few readings at 0 A among those under load the cell's resistance tells itself.";
  if (capacityFrom === "known") return "A discharge down to the cell's minimum would give the capacity.";
  const doubt = resistance > 0 ? (resistanceError ?? 0) / resistance : 0;
  if (doubt > COARSE)
    return "The resistance is known to more than 5 %: twice as many rests would take about a third off its error.";
  return "Nothing for this temperature. A cold cell sags more: a second discharge where it is used would say by how much.";
}

/** Relative error of R from which more rests are worth the while [-]. Judgement. */
const COARSE = 0.05;
