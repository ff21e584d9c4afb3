import { type Book, findById } from "../../../../shared/book/book.ts";
import { limitsInput } from "../../../../shared/book/limitsInput.ts";
import { massBoard } from "../../../../shared/book/mass/workings.ts";
import { solvable } from "../../../../shared/book/resolve.ts";
import { nearestSize, rotorHeight } from "../../../../shared/book/rotorSize.ts";
import { runInput } from "../../../../shared/book/runInput.ts";
import {
  burstFactorWorking,
  rotorWorkings,
  windingWorking,
} from "../../../../shared/decide/limits/workings.ts";
import { keptReach } from "../../../../shared/decide/ways/kept.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import {
  type Board,
  type Origin,
  type Row,
  subscript,
  type Working,
  workedOut,
} from "../../../../shared/physics/working.ts";
import { type Outcome, solve } from "../../../state/outcome.ts";
import { boardOf } from "../../../ui/working/board.ts";
import type { Column, Combination } from "../answers.ts";
import { buildFor } from "../openCombination.ts";
import { LEAST_TITLE, leastWorking, wantedOf } from "./marginWorkings.ts";

const DOC = "docs/method/choosing.md";

type Wants = Pick<ChooseRequest["wants"], "attitudes" | "targetMargin">;

/** A combination as a build, solved. */
interface Of {
  readonly book: Book;
  readonly combination: Combination;
  readonly outcome: Outcome;
  readonly wants: Wants;
}

/** What each fact is called by its working. */
const TITLES: Partial<Readonly<Record<Column, string>>> = {
  margin: LEAST_TITLE,
  mass: "mass on board",
  suction: "pull",
  pressure: "pressure of the rotor",
  flow: "flow through everything that leaks",
  speed: "speed",
  packCurrent: "current out of the pack",
  time: "time until the charge ends",
  keptTime: "time that a controller keeps the margin",
  windingTemperature: "settled temperature of the winding",
  rotorFactor: "burst speed over its own",
  height: "total height",
  price: "price of the parts",
};

/** @returns what the working of a fact is called; of an open propeller the pull is its thrust */
export const factTitle = (column: Column, isOpen: boolean): string | undefined =>
  column === "suction" && isOpen ? "thrust" : TITLES[column];

const titled = (column: Column): string => factTitle(column, false) ?? column;

/** Heights or prices of the parts, added. */
function sumWorking(
  column: "height" | "price",
  unit: string,
  assumptions: readonly string[],
  { book, combination }: Of,
): Working[] {
  const value = combination.values[column];
  const rotor = findById(book.rotors, combination.parts.rotor)?.data;
  const parts = [
    findById(book.packs, combination.parts.pack)?.data,
    findById(book.skirts, combination.parts.skirt)?.data,
  ];
  const motor = findById(book.motors, combination.parts.motor)?.data;
  if (value === null || !rotor || !motor) return [];
  const isHeight = column === "height";
  const size = nearestSize(rotor, combination.diameter);
  const own = [
    { name: motor.name, of: isHeight ? motor.length : motor.price },
    { name: rotor.name, of: isHeight ? rotorHeight(rotor, combination.diameter) : size.price },
    ...parts.flatMap((part) => (part ? [{ name: part.name, of: part[column] }] : [])),
  ];
  const rows = own.flatMap(({ name, of }, i): Row[] =>
    typeof of === "number" ? [[[`${isHeight ? "h" : "p"}${subscript(i + 1)}`, name, unit], of]] : [],
  );
  const told = {
    title: titled(column),
    equation: isHeight ? "H = Σ h_i" : "P = Σ p_i",
    output: [isHeight ? "H" : "P", unit] as const,
    source: DOC,
    assumptions,
  };
  return [workedOut(told, rows, value)];
}

const SETTLED =
  "The winding warm as it settles; the current by three operating points along the fall of the cell.";

/** Minutes at the combination's own throttle. */
function timeWorking({ combination, outcome }: Of): Working[] {
  const { time } = combination.values;
  const run = outcome.resolved && runInput(outcome.build, outcome.resolved);
  if (time === null || !run || !(time > 0)) return [];
  return [
    workedOut(
      {
        title: titled("time"),
        equation: "t = N_p·C·∫dz/I_pack(z),  from z₀ to where V_cell = V_min",
        output: ["t", "s"],
        source: DOC,
        assumptions: [SETTLED],
      },
      [
        [["z₀", "charge at the start", ""], run.startCharge ?? 1],
        [["C", "charge that a full cell holds", "C"], run.pack.cell.capacity],
        [["N_p", "cells in parallel", ""], run.pack.parallel],
        [["V_min", "least that the cell's maker allows under load", "V"], run.pack.cell.minimumVoltage],
        [["I_pack", "out of the pack at the start", "A"], combination.values.packCurrent ?? Number.NaN],
      ],
      time,
    ),
  ];
}

/** Minutes that a controller keeps the wanted margin. */
function keptWorking({ combination, outcome, wants }: Of): Working[] {
  const { keptTime } = combination.values;
  const { resolved } = outcome;
  const input = resolved && solvable(resolved);
  if (keptTime === null || !input) return [];
  const holds = wants.attitudes.map(({ angle, mode }) => ({ angle, mode, margin: wants.targetMargin }));
  const kept = keptReach(input, resolved.pack?.cell ?? null, holds);
  const isThrust = kept !== null && "thrust" in kept.keep;
  const keep = kept && ("thrust" in kept.keep ? kept.keep.thrust : kept.keep.pressure);
  const rows: Row[] = [
    [["M", "margin that is kept", ""], wants.targetMargin],
    ...(kept && keep !== null
      ? ([
          isThrust
            ? [["T", "thrust that gives it on the hardest attitude", "N"], keep]
            : [["Δp", "suction that gives it on the hardest attitude", "Pa", "pressure"], keep],
          [["δ₀", "throttle at the start", ""], kept.dutyAtStart],
        ] satisfies Row[])
      : []),
  ];
  return [
    workedOut(
      {
        title: titled("keptTime"),
        equation: "t = N_p·C·∫dz/I_pack(z),  from z₀ to where δ = 1 is too little or V_cell = V_min",
        output: ["t", "s"],
        source: DOC,
        assumptions: ["The controller holds suction or thrust; the throttle rises as the cell falls."],
      },
      rows,
      keptTime,
    ),
  ];
}

/** Burst speed over speed, and what the winding settles at. */
function limitFacts({ book, combination, outcome }: Of): Working[] {
  const { build, resolved } = outcome;
  const run = resolved && runInput(build, resolved);
  const { rotorFactor, speed, windingTemperature, packCurrent } = combination.values;
  if (!run) return [];
  const input = limitsInput(book, build, run);
  const { duty, auxCurrent } = run.supply;
  const winding =
    windingTemperature === null || packCurrent === null
      ? null
      : windingWorking(input, (packCurrent - auxCurrent) / duty, windingTemperature);
  if (rotorFactor === null || speed === null) return winding ? [winding] : [];
  const burst = burstFactorWorking(rotorFactor, speed);
  return [burst, ...(winding ? [winding] : []), ...rotorWorkings(input, speed)];
}

/** Heights, prices and what the cell is, from the parts' pages. */
function partOrigins({ combination, outcome }: Of): Origin[] {
  const run = outcome.resolved && runInput(outcome.build, outcome.resolved);
  if (!run) return [];
  const page = "On the pack's page, or by its discharge tests.";
  const { capacity, minimumVoltage } = run.pack.cell;
  return [
    { symbol: "z₀", value: run.startCharge ?? 1, what: "Set in the build that gave the rest.", tests: [] },
    { symbol: "C", value: capacity, what: page, tests: outcome.resolved?.pack?.testIds ?? [] },
    { symbol: "V_min", value: minimumVoltage, what: "On the pack's page.", tests: [] },
    { symbol: "ω", value: combination.values.speed ?? Number.NaN, what: "Found by the search.", tests: [] },
  ];
}

const HEIGHT_TAKEN = ["A part without a height adds none; the rotor's goes with its diameter."];
const PRICE_TAKEN = ["Prices of one currency, the rotor's that of its nearest listed size."];

/** @returns how the facts of a combination came about, down to its build's own workings */
export function factBoard(book: Book, base: Build, combination: Combination, wants: Wants): Board {
  const build = buildFor(book, base, combination);
  const outcome = solve(book, build);
  const of = { book, combination, outcome, wants };
  const wanted = wantedOf(outcome, wants);
  const angles = wanted.map(({ angle }) => angle);
  const solved = boardOf(book, outcome, angles);
  const mass = massBoard(book, build);
  return {
    workings: [
      ...timeWorking(of),
      ...keptWorking(of),
      ...limitFacts(of),
      ...sumWorking("height", "m", HEIGHT_TAKEN, of),
      ...sumWorking("price", "", PRICE_TAKEN, of),
      ...solved.workings,
      ...leastWorking(combination, wanted, solved),
      ...mass.workings,
    ],
    origins: [...partOrigins(of), ...solved.origins, ...mass.origins],
  };
}
