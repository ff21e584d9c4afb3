import { coldRise } from "../../../../shared/physics/cells/cold.ts";
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

/** @returns R of a cell with its standard error where a test tells it; from the least to the greatest where it varies with the charge */
export function cellResistanceText({ pack, basis }: PackPage): string {
  const fit = basis.basis === "missing" ? null : basis.fit;
  if (fit?.resistanceByCharge) {
    const each = fit.resistanceByCharge.map(({ resistance }) => resistance);
    const least = figureIn(Math.min(...each), "smallResistance", 1);
    return `${least} to ${formatQuantity(Math.max(...each), "smallResistance", { decimals: 1 })}, by charge`;
  }
  if (!fit) return formatQuantity(pack.data.cell.resistance, "resistance");
  const value = figureIn(fit.resistance, "smallResistance", 1);
  if (fit.resistanceError === null) return withUnit(value, unitOf("smallResistance"));
  return `${value} ± ${formatQuantity(fit.resistanceError, "smallResistance", { decimals: 1 })}`;
}

const percent = (charge: number) => `${formatFixed(100 * charge, 0)}\u202f%`;

/** @returns how a cell's resistance goes with its charge, one sentence; null where one stands for every charge */
export function resistanceSentence({ pack, basis }: PackPage): string | null {
  const told = basis.basis === "missing" ? null : basis.fit?.resistanceByCharge;
  if (!told) return null;
  const [empty, full] = [told[0], told[told.length - 1]].map(
    ({ charge, resistance }) =>
      `${formatQuantity(resistance, "smallResistance", { decimals: 1 })} at ${percent(charge)} charge`,
  );
  return `Resistance of a cell of ${pack.data.name} by the steps of current in its discharges: from ${full} to ${empty}. Between the points straight lines are used, beyond them the nearest one.`;
}

/** How a cell's resistance rises in the cold, by the pack's stated factor; null where none is stated. */
export interface ColdRise {
  /** "2.5 × at freezing, 65.0 mΩ" */
  readonly text: string;
  readonly mark: "stated" | "estimated";
}

/** Where the factor for the cold is stated [K]. */
const FREEZING = 273.15;

/** @returns the pack's factor for the cold in words */
export function coldRiseOf({ pack, basis }: PackPage): ColdRise | null {
  const { coldFactor, resistance } = pack.data.cell;
  if (coldFactor === undefined) return null;
  const told = basis.basis === "missing" ? null : basis;
  const warm = told ? coldRise(coldFactor, told.toldAt) : 1;
  const cold = ((told?.cell.resistance ?? resistance) * coldRise(coldFactor, FREEZING)) / warm;
  const times = `${formatFixed(coldFactor, 1)} × at freezing`;
  const varies = told?.fit?.resistanceByCharge;
  return {
    text: varies ? times : `${times}, ${formatQuantity(cold, "smallResistance", { decimals: 1 })}`,
    mark: pack.data.estimated.includes("cell.coldFactor") ? "estimated" : "stated",
  };
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
    return "Rests: with a few readings at 0 A among those under load the cell's resistance tells itself. A second discharge at half or twice the current does as well.";
  if (capacityFrom === "known") return "A discharge down to the cell's minimum would give the capacity.";
  const doubt = resistance > 0 ? (resistanceError ?? 0) / resistance : 0;
  if (doubt > COARSE)
    return "The resistance is known to more than 5 %: twice as many rests would take about a third off its error.";
  return "Nothing for this temperature. A cold cell sags more: a second discharge where it is used would say by how much, for the pack's page.";
}

/** Relative error of R from which more rests are worth the while [-]. Judgement. */
const COARSE = 0.05;
