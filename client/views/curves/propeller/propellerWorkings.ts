import type { PropellerFit } from "../../../../shared/fit/propellerFit.ts";
import type { Board, Row, Told } from "../../../../shared/physics/working.ts";
import { NO_BOARD } from "../../../ui/working/board.ts";
import { type Fitted, fitBoard, inUse } from "../fitBoard.ts";
import type { PropellerPage, Which } from "./propellerData.ts";

type Line = Pick<Told, "equation"> & {
  readonly title: string;
  readonly symbol: string;
  readonly slope: string;
  /** of what the coefficient is fitted in */
  readonly unit: string;
  readonly residual: string;
};

const LINES: Readonly<Record<Which, Line>> = {
  thrust: {
    title: "thrust coefficient",
    symbol: "C_T",
    slope: "c_T",
    unit: "N",
    residual: "residual of the thrust",
    equation: "T = ρ·(ω/(2π))²·D⁴·(C_T + c_T·ln(Re/Re_ref)),  least Σ (T_i − T)²",
  },
  power: {
    title: "power coefficient",
    symbol: "C_P",
    slope: "c_P",
    unit: "W",
    residual: "residual of the shaft power",
    equation: "P = ρ·(ω/(2π))³·D⁵·(C_P + c_P·ln(Re/Re_ref)),  least Σ (P_i − P)²",
  },
};

const SOURCE = "least squares, every row counting alike; docs/method/fits/propeller.md";

function fitted(fit: PropellerFit, which: Which): Fitted[] {
  const line = fit[which];
  if (!line) return [];
  const { title, symbol, slope, unit, residual, equation } = LINES[which];
  const [level, drift] = line;
  const sd = fit.residualSd[which];
  const variance = fit.covariance[which]?.[1]?.[1] ?? 0;
  const common: Row[] = [
    [["Re_ref", "Reynolds number that the coefficient is stated at", ""], fit.referenceReynolds],
    ...(sd === null ? [] : [[["s", residual, unit], sd] as const]),
  ];
  const told = { equation, source: SOURCE };
  const assumptions = ["Standing still, a diameter of free air all round.", "Re in air of 20 °C."];
  return [
    {
      told: { ...told, title, output: [symbol, ""], assumptions },
      value: level,
      error: fit.standardErrors[which],
      rows: [...common, [[slope, "drift of the coefficient for each ln Re", ""], drift]],
    },
    ...(drift === 0
      ? []
      : [
          {
            told: {
              ...told,
              title: `drift of the ${title}`,
              output: [slope, ""] as const,
              assumptions: ["Kept because three speeds or more show it at 5 %."],
            },
            value: drift,
            error: variance > 0 ? Math.sqrt(variance) : null,
            rows: [...common, [[symbol, "the coefficient itself", ""], level] as const],
          },
        ]),
  ];
}

/** @returns how the coefficients of a propeller came about */
export function propellerFitBoard({ fit, readings }: PropellerPage): Board {
  if (!fit) return NO_BOARD;
  return fitBoard([...fitted(fit, "thrust"), ...fitted(fit, "power")], inUse(readings));
}
