import type { MassLine } from "../../../../shared/book/mass/ledger.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { BASIS_WORDS, massText } from "../../mass/massWords.ts";
import { type PartRow, partRows } from "../../sheet/partRows.ts";
import type { Column } from "../useColumn.ts";
import { type Cell, NOTHING, type RowGroup, row, rowsOfAll } from "./row.ts";

/** A propeller stands where a rotor does. */
const TURNS = ["Rotor", "Propeller"];

/** A part of the build, with what it weighs. */
interface Part extends PartRow {
  readonly key: string;
  readonly title: string;
  readonly line: MassLine | null;
}

function partCell({ name, figures, line }: Part): Cell {
  const weight = line && line.basis !== "missing" ? `${massText(line.mass)}, ${BASIS_WORDS[line.basis]}` : "";
  const all = [name, ...figures, weight].filter(Boolean);
  const [text, ...also] = all;
  return { text, also, compared: all.join("; "), saved: all.join("; ") };
}

function partsOf(book: Book, { outcome, headroom }: Column, turning: string): Part[] {
  return partRows(book, outcome).map((part) => {
    const title = TURNS.includes(part.what) ? turning : part.what;
    const of = TURNS.includes(part.what) ? "rotor" : part.what.toLowerCase();
    const line = headroom.ledger.lines.find((each) => each.of === of) ?? null;
    return { ...part, key: title, title, line };
  });
}

function turningTitle(columns: readonly Column[]): string {
  const kinds = new Set(columns.map(({ outcome }) => (outcome.resolved?.propeller ? TURNS[1] : TURNS[0])));
  return kinds.size > 1 ? "Rotor or propeller" : [...kinds][0];
}

function priceCell({ price: { price, missing } }: Column): Cell {
  if (price === null) return { ...NOTHING, also: [`no price for ${missing.join(", ")}`] };
  return { text: formatFixed(price, 2), saved: price };
}

/** What each build is made of, where it works, and what its parts cost. */
export function parts(book: Book, columns: readonly Column[]): RowGroup {
  const turning = turningTitle(columns);
  return {
    title: "Parts",
    rows: [
      ...rowsOfAll(columns, (column) => partsOf(book, column, turning), partCell, ""),
      row("price", "Price of motor, rotor, pack and skirt", "", columns, priceCell),
    ],
  };
}
