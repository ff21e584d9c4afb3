import type { DischargeFit } from "../../../../shared/fit/dischargeFit.ts";
import { coldRise } from "../../../../shared/physics/cells/cold.ts";
import {
  type Board,
  type Row,
  subscript,
  type Working,
  workedOut,
} from "../../../../shared/physics/working.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { NO_BOARD } from "../../../ui/working/board.ts";
import { type Fitted, fitBoard } from "../fitBoard.ts";
import type { PackPage } from "./packData.ts";
import { PACK_CAPACITY_TITLE } from "./packTitles.ts";

const DOC = "docs/method/fits/discharge.md";
const PERCENT = 100;
/** Where the factor for the cold is stated [K]. */
const FREEZING = 273.15;
const CHARGE = "z = 1 − q/C, q drawn since full.";

/** What is told of the resistance, by where it is from. */
const EQUATIONS: Readonly<Record<Exclude<DischargeFit["resistanceFrom"], "known">, string>> = {
  rests: "ΔV_i = −R·ΔI_i,  each reading against the line between its neighbours in charge",
  currents: "ΔV_i = −R·ΔI_i,  each reading against the line between its neighbours in charge",
  discharges: "R(q) = (V₁ − V₂)/(I₂ − I₁),  each reading of one discharge against the other at its charge",
};

const scatterRow = (sd: number | null): Row[] =>
  sd === null ? [] : [[["s", "scatter of a voltage about curve and sag", "V"], sd]];

function resistances(fit: DischargeFit): Fitted[] {
  const { resistance, resistanceError, resistanceFrom, resistanceByCharge, residualSd } = fit;
  if (resistanceFrom === "known") return [];
  const told = {
    equation: EQUATIONS[resistanceFrom],
    source: `Huber's regression through 0 (1964); ${DOC}`,
    assumptions: ["One resistance for all currents; a bend of the curve counts as an outlier."],
  };
  const one: Fitted = {
    told: { ...told, title: "resistance of a cell", output: ["R", "Ω"] },
    value: resistance,
    error: resistanceError,
    rows: scatterRow(residualSd),
  };
  const byCharge = (resistanceByCharge ?? []).map((at, i): Fitted => {
    const percent = formatFixed(at.charge * PERCENT, 0);
    return {
      told: {
        ...told,
        title: `resistance of a cell at ${percent} % charge`,
        output: [`R${subscript(i + 1)}`, "Ω"],
        assumptions: [...told.assumptions, "From the steps of current of this stretch of the charge alone."],
      },
      value: at.resistance,
      error: at.standardError,
      rows: [[["z", "mean charge of those steps", ""], at.charge]],
    };
  });
  return [one, ...byCharge];
}

function capacity({ capacity: value, capacityFrom }: DischargeFit): Fitted[] {
  if (capacityFrom !== "emptied") return [];
  const told = {
    title: "capacity of a cell",
    equation: "C = mean of q_end",
    output: ["C", "C"] as const,
    source: DOC,
    assumptions: [
      "Of the discharges that went to the cell's minimum, what was drawn over cells in parallel.",
    ],
  };
  return [{ told, value, error: null, rows: [] }];
}

/** Of all cells side by side. */
function packCapacity({ pack }: PackPage, { capacity, capacityFrom }: DischargeFit): Working[] {
  if (capacityFrom !== "emptied") return [];
  const { parallel } = pack.data;
  return [
    workedOut(
      { title: PACK_CAPACITY_TITLE, equation: "C_pack = N_p·C", output: ["C_pack", "C"], source: DOC },
      [
        [["N_p", "cells in parallel", ""], parallel],
        [["C", "capacity of a cell", "C"], capacity],
      ],
      parallel * capacity,
    ),
  ];
}

/** The open-circuit voltage at both ends of the charge. */
function ends({ curve, resistance, residualSd }: DischargeFit): Fitted[] {
  const end = (title: string, [charge, voltage]: readonly [number, number]): Fitted => ({
    told: {
      title,
      equation: "V_oc(z) = V + R(z)·I",
      output: ["V_oc", "V"],
      source: `isotonic regression; ${DOC}`,
      assumptions: [CHARGE, "Readings out of order are averaged; up to 5 % of charge not read is drawn on."],
    },
    value: voltage,
    error: null,
    rows: [
      [["z", "charge", ""], charge],
      [["R", "resistance of a cell", "Ω"], resistance],
      ...scatterRow(residualSd),
    ],
  });
  return [
    end("voltage of a full cell at rest", curve[curve.length - 1]),
    end("voltage of an empty cell at rest", curve[0]),
  ];
}

/** Resistance at freezing, by the factor on the pack's page. */
function coldWorking({ pack, basis }: PackPage): Working[] {
  const { coldFactor, resistance } = pack.data.cell;
  const told = basis.basis === "missing" ? null : basis;
  if (coldFactor === undefined || told?.fit?.resistanceByCharge) return [];
  const [warm, freezing] = [told ? coldRise(coldFactor, told.toldAt) : 1, coldRise(coldFactor, FREEZING)];
  const now = told?.cell.resistance ?? resistance;
  return [
    workedOut(
      {
        title: "resistance of a cell at freezing",
        equation: "R_cold = R·f(T_cold)/f(T_told)",
        output: ["R_cold", "Ω"],
        source: "docs/method/run-down.md",
        assumptions: ["f by the factor on the pack's page, 1 at 20 °C."],
      },
      [
        [["R", "resistance of a cell", "Ω"], now],
        [["f(T_cold)", "factor at 0 °C", ""], freezing],
        [["f(T_told)", "factor in the air in which it was told", ""], warm],
      ],
      (now * freezing) / warm,
    ),
  ];
}

/** @returns how the figures of a pack's page came about, down to its discharge tests; none where nothing was fitted */
export function packFitBoard(page: PackPage): Board {
  const fit = page.basis.basis === "missing" ? null : page.basis.fit;
  const cold = coldWorking(page);
  if (!fit) return cold.length === 0 ? NO_BOARD : { workings: cold, origins: [] };
  const readings = page.points.filter(({ aside }) => aside === null);
  const board = fitBoard([...resistances(fit), ...capacity(fit), ...ends(fit)], readings);
  const stated = { symbol: "R", value: fit.resistance, what: "As the pack's page states it.", tests: [] };
  return {
    workings: [...board.workings, ...packCapacity(page, fit), ...cold],
    origins: fit.resistanceFrom === "known" ? [...board.origins, stated] : board.origins,
  };
}
