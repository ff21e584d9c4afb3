import type { Book } from "../../../../shared/book/resolve.ts";
import { pullText } from "../../../../shared/decide/verdict/figures.ts";
import { figureIn, formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed, unitOf } from "../../../../shared/units/showing.ts";
import { boardOf } from "../../../ui/working/board.ts";
import { sampledOf } from "../../../ui/working/sampled.ts";
import { rpmText } from "../../match/thrust/thrustWords.ts";
import type { Column } from "../useColumn.ts";
import { type Cell, NOTHING, type RowGroup, row } from "./row.ts";

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
    also: isSampled
      ? [
          [
            {
              text: `${figureIn(p5, "load", 0)} to ${pullText(p95)}`,
              working: { board: () => sampledOf(outcome, sure), title: "5 to 95 % of the pull", value: p5 },
            },
          ],
        ]
      : [],
    saved: inUnit(suction, "load"),
    more: isSampled
      ? { [headed("5 %", "load")]: inUnit(p5, "load"), [headed("95 %", "load")]: inUnit(p95, "load") }
      : {},
    working: { board: () => boardOf(book, outcome), title, value: suction },
  };
}

function speedCell({ outcome: { prediction } }: Column): Cell {
  const point = prediction?.point;
  return point ? { text: rpmText(point.speed), saved: inUnit(point.speed, "speed") } : NOTHING;
}

function suctionCell({ outcome: { prediction } }: Column): Cell {
  const pressure = prediction?.point?.pressure ?? null;
  if (pressure === null) return NOTHING;
  return { text: formatQuantity(pressure, "pressure", { decimals: 0 }), saved: inUnit(pressure, "pressure") };
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
      row("pull", forceTitle(columns), unitOf("load"), columns, (column) => pullCell(book, column)),
      row("speed", "Speed", unitOf("speed"), columns, speedCell),
      row("suction", "Suction", unitOf("pressure"), columns, suctionCell),
      row("current", "Current of the pack", "A", columns, currentCell),
    ],
  };
}
