import type { Book } from "../../../../shared/book/book.ts";
import { massBoard } from "../../../../shared/book/mass/workings.ts";
import { formatFixed, formatShort, inUnit } from "../../../../shared/units/format.ts";
import { headed, unitOf } from "../../../../shared/units/showing.ts";
import { type Allowed, headroomBoard, tightestFirst } from "../../mass/headroom.ts";
import { groupSums, halfBand, massText, plusMinus } from "../../mass/massWords.ts";
import type { Column } from "../useColumn.ts";
import { BEYOND, type Cell, NOTHING, type Piece, type RowGroup, row, rowsOfAll } from "./row.ts";

const shown = (kilograms: number) => inUnit(kilograms, "mass");

function wholeCell(book: Book, { build, headroom: { ledger } }: Column): Cell {
  const { value, uncertainty } = ledger.mass;
  return {
    text: massText(value),
    working: { board: () => massBoard(book, build), title: "mass on board" },
    also: [plusMinus(ledger.mass).trim(), ledger.whole ? "as one number" : "the sum of its lines"].filter(
      Boolean,
    ),
    saved: uncertainty > 0 ? { value: shown(value), uncertainty: shown(uncertainty) } : shown(value),
  };
}

/** Of a mass that is allowed, as its workings name it. */
const onAttitude = (name: string, target: number) => `on ${name} at ${formatShort(target, 2)} ×`;

/** What is left on an attitude, or missing, at the margin wanted. */
function leftCell(book: Book, { name, atTarget, atOne }: Allowed, { build, headroom }: Column): Cell {
  const { mass, ledger, target } = headroom;
  if (atTarget === null) return { text: "any mass holds", saved: null };
  const left = atTarget - mass;
  const spread = halfBand(ledger.mass);
  const board = () => headroomBoard(book, build, headroom);
  const allowed = (limit: number, wanted: number): Piece => ({
    text: massText(limit),
    working: { board, title: `mass allowed ${onAttitude(name, wanted)}`, value: limit },
  });
  return {
    working: { board, title: `mass left ${onAttitude(name, target)}`, value: left },
    text: left < 0 ? `${massText(-left)} too heavy` : `${massText(left)} left`,
    also: [
      ...(spread ? [spread] : []),
      ...(atOne === null
        ? []
        : [["of ", allowed(atTarget, target), "; ", allowed(atOne, 1), " at 1\u202f×"] as const]),
    ],
    tone: left < 0 ? "bad" : undefined,
    saved: shown(left),
    more: {
      [headed("allowed", "mass")]: shown(atTarget),
      [headed("allowed at 1 ×", "mass")]: atOne === null ? null : shown(atOne),
    },
  };
}

function allowedRows(book: Book, columns: readonly Column[]) {
  const listed = ({ headroom }: Column) =>
    headroom.allowed.map((each) => {
      const degrees = formatFixed(each.angle, 0);
      const isWorst = each.title.startsWith("Worst");
      const title = isWorst ? "Headroom at the worst angle" : `Headroom, ${each.title} ${degrees}°`;
      return { ...each, key: title, title, angle: isWorst ? BEYOND : each.angle };
    });
  return rowsOfAll(columns, listed, (allowed, column) => leftCell(book, allowed, column), unitOf("mass"));
}

function tightestCell(book: Book, column: Column): Cell {
  const [tightest] = tightestFirst(column.headroom);
  if (!tightest) return NOTHING;
  const { text, saved, tone, working } = leftCell(book, tightest, column);
  return { text, saved, tone, working, also: [`for ${tightest.name}`] };
}

const groupRows = (book: Book, columns: readonly Column[]) =>
  rowsOfAll(
    columns,
    ({ headroom }) =>
      groupSums(headroom).map((sum) => {
        const title = `Mass, ${sum.group}`;
        return { ...sum, key: `group ${sum.group}`, title };
      }),
    (sum, { build }) => ({
      text: massText(sum.value),
      working: { board: () => massBoard(book, build), title: `sum of ${sum.group}` },
      also: [halfBand(sum)].filter(Boolean),
      saved: shown(sum.value),
    }),
    unitOf("mass"),
  );

/** What each build weighs, part by part, and what it may weigh. */
export function mass(book: Book, columns: readonly Column[]): RowGroup {
  return {
    title: "Mass",
    rows: [
      row("mass", "Mass", unitOf("mass"), columns, (column) => wholeCell(book, column)),
      row("tightest", "Headroom where it is tightest", unitOf("mass"), columns, (column) =>
        tightestCell(book, column),
      ),
      ...allowedRows(book, columns),
      ...groupRows(book, columns),
    ],
  };
}
