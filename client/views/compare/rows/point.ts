import type { Book } from "../../../../shared/book/resolve.ts";
import { pullText } from "../../../../shared/decide/verdict/figures.ts";
import { STANDARD_GRAVITY } from "../../../../shared/physics/constants.ts";
import { formatFixed, formatQuantity, THIN_SPACE } from "../../../../shared/units/format.ts";
import { boardOf } from "../../../ui/working/board.ts";
import { rpmText } from "../../match/thrust/thrustWords.ts";
import type { Column } from "../useColumn.ts";
import { type Cell, NOTHING, type RowGroup, row } from "./row.ts";

const GRAMS = 1000;
const inGrams = (force: number) => (force / STANDARD_GRAVITY) * GRAMS;
/** Titles of the workings of the force that presses. */
const FORCES = { ducted: "pull", propeller: "thrust" } as const;

function pullCell(book: Book, { outcome, sure }: Column): Cell {
  const { prediction } = outcome;
  if (!prediction?.point) return NOTHING;
  const { suction } = prediction;
  const { p5 = null, p95 = null } = sure.doubt?.suction ?? {};
  const isSampled = p5 !== null && p95 !== null;
  const title = FORCES[outcome.resolved?.propeller ? "propeller" : "ducted"];
  return {
    text: pullText(suction),
    also: isSampled ? [`${formatFixed(inGrams(p5), 0)} to ${pullText(p95)}`] : [],
    saved: inGrams(suction),
    more: isSampled ? { "5 %, g": inGrams(p5), "95 %, g": inGrams(p95) } : {},
    working: { board: () => boardOf(book, outcome), title, value: suction },
  };
}

function speedCell({ outcome: { prediction } }: Column): Cell {
  const point = prediction?.point;
  return point ? { text: rpmText(point.speed), saved: point.rpm } : NOTHING;
}

function suctionCell({ outcome: { prediction } }: Column): Cell {
  const pressure = prediction?.point?.pressure ?? null;
  if (pressure === null) return NOTHING;
  return { text: `${formatFixed(pressure, 0)}${THIN_SPACE}Pa`, saved: pressure };
}

function currentCell({ outcome: { prediction } }: Column): Cell {
  const current = prediction?.point?.packCurrent;
  return current === undefined ? NOTHING : { text: formatQuantity(current, "current"), saved: current };
}

function forceTitle(columns: readonly Column[]): string {
  const kinds = new Set(columns.map(({ outcome }) => (outcome.resolved?.propeller ? "thrust" : "pull")));
  if (kinds.size > 1) return "Pull, or thrust of a propeller";
  return kinds.has("thrust") ? "Thrust" : "Pull";
}

/** Where each build settles, at the charge that its figures are shown at. */
export function point(book: Book, columns: readonly Column[]): RowGroup {
  return {
    title: "Operating point, at the charge that figures are shown at",
    rows: [
      row("pull", forceTitle(columns), "g", columns, (column) => pullCell(book, column)),
      row("speed", "Speed", "rpm", columns, speedCell),
      row("suction", "Suction", "Pa", columns, suctionCell),
      row("current", "Current of the pack", "A", columns, currentCell),
    ],
  };
}
