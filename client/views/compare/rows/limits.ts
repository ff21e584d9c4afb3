import { originsOf } from "../../../../shared/book/origins.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Limit, LimitKey } from "../../../../shared/decide/limits/limit.ts";
import { limitWorkings } from "../../../../shared/decide/limits/workings.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { formatFixed, inUnit, THIN_SPACE } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { limitText, nearText, TITLES, TONES, valueText } from "../../rundown/limits/limitWords.ts";
import type { Column } from "../useColumn.ts";
import { type Cell, NOTHING, type Row, type RowGroup, row } from "./row.ts";

const QUANTITIES: Readonly<Record<LimitKey, DimensionName>> = {
  winding: "temperature",
  "motor-voltage": "voltage",
  "motor-current": "current",
  "cell-current": "current",
  "cell-voltage": "voltage",
  "rotor-speed": "speed",
};

function savedFigure({ key, value }: Limit): number | null {
  return value === null ? null : inUnit(value, QUANTITIES[key]);
}

/** Titles of the workings that the limits have. */
const WORKED: Readonly<Partial<Record<LimitKey | "burst", string>>> = {
  winding: "settled temperature of the winding",
  burst: "burst speed over its own",
};

function workingOf(book: Book, column: Column, of: LimitKey | "burst"): Cell["working"] {
  const { limits, limitsInput: input, outcome } = column;
  const title = WORKED[of];
  if (!title || !limits || !input || !outcome.resolved) return undefined;
  const { build, resolved } = outcome;
  const board = () => ({
    workings: limitWorkings(input, limits),
    origins: originsOf({ book, build, resolved }),
  });
  return { board, title };
}

function limitCell(book: Book, column: Column, key: LimitKey): Cell | null {
  const { limits, isRunning } = column;
  const limit = limits?.limits.find((each) => each.key === key);
  if (!limit) return isRunning ? null : NOTHING;
  return {
    text: valueText(limit),
    also: [limitText(limit), nearText(limit)],
    tone: TONES[limit.verdict],
    saved: savedFigure(limit),
    ...(limit.estimated ? { marks: [{ word: "estimated", what: "" }] } : {}),
    working: limit.value === null ? undefined : workingOf(book, column, key),
  };
}

/** Speed at which the rotor bursts over the speed that it runs at. */
function burstCell(book: Book, column: Column): Cell | null {
  const { limits, isRunning } = column;
  if (!limits) return isRunning ? null : NOTHING;
  const { factor } = limits.rotor;
  if (factor === null) return { ...NOTHING, also: ["material of the rotor not known"] };
  if (!Number.isFinite(factor)) return { ...NOTHING, also: ["it stands still"] };
  return {
    text: `${formatFixed(factor, 2)}${THIN_SPACE}×`,
    saved: factor,
    working: workingOf(book, column, "burst"),
  };
}

/** What burns or bursts first in each build, and how near everything else is. */
export function limits(book: Book, columns: readonly Column[]): RowGroup {
  const known = (Object.keys(TITLES) as LimitKey[]).filter((key) =>
    columns.some((column) => column.limits?.limits.some((limit) => limit.key === key) ?? true),
  );
  const limitRow = (key: LimitKey): Row =>
    row(key, TITLES[key], unitOf(QUANTITIES[key]), columns, (column) => limitCell(book, column, key));
  return {
    title: "Limits",
    rows: [
      ...known.map(limitRow),
      row("burst", "Burst factor on speed", "×", columns, (column) => burstCell(book, column)),
    ],
  };
}
