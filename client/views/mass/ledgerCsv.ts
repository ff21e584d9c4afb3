import { type Ledger, type MassLine, sumOf } from "../../../shared/book/mass/ledger.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import type { Cell, Table } from "../../ui/table.ts";
import { BASIS_WORDS, groupTitle } from "./massWords.ts";

const massCell = (kilograms: number, basis: MassLine["basis"]): Cell =>
  basis === "missing" ? null : inUnit(kilograms, "mass");

function rowOf(line: MassLine): Cell[] {
  const { group, name, quantity, mass, uncertainty, basis } = line;
  const whole = sumOf([line]);
  return [
    groupTitle(group),
    name,
    quantity,
    ...[mass, uncertainty, whole.value, whole.uncertainty].map((each) => massCell(each, basis)),
    BASIS_WORDS[basis],
  ];
}

/** @returns every line of a build's masses as a table, then their sum, and the whole where it was weighed as one */
export function ledgerTable({ lines, sum, whole }: Ledger): Table {
  const total = (name: string, { value, uncertainty }: { value: number; uncertainty: number }): Cell[] => [
    "",
    name,
    null,
    null,
    null,
    inUnit(value, "mass"),
    inUnit(uncertainty, "mass"),
    "",
  ];
  return {
    columns: [
      "Group",
      "On board",
      "Pieces",
      headed("Mass of a piece", "mass"),
      headed("Standard uncertainty of a piece", "mass"),
      headed("Mass", "mass"),
      headed("Standard uncertainty", "mass"),
      "How it is known",
    ],
    rows: [
      ...lines.map(rowOf),
      total("Sum of the lines", sum),
      ...(whole ? [total("The whole, as one number", whole)] : []),
    ],
  };
}
