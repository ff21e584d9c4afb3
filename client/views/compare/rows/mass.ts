import { formatFixed, inUnit } from "../../../../shared/units/format.ts";
import { headed, unitOf } from "../../../../shared/units/showing.ts";
import { type Allowed, type Headroom, tightestFirst } from "../../mass/headroom.ts";
import { groupSums, halfBand, massText, plusMinus } from "../../mass/massWords.ts";
import type { Column } from "../useColumn.ts";
import { BEYOND, type Cell, NOTHING, type RowGroup, row, rowsOfAll } from "./row.ts";

const shown = (kilograms: number) => inUnit(kilograms, "mass");

function wholeCell({ headroom: { ledger } }: Column): Cell {
  const { value, uncertainty } = ledger.mass;
  return {
    text: massText(value),
    also: [plusMinus(ledger.mass).trim(), ledger.whole ? "as one number" : "the sum of its lines"].filter(
      Boolean,
    ),
    saved: uncertainty > 0 ? { value: shown(value), uncertainty: shown(uncertainty) } : shown(value),
  };
}

/** What is left on an attitude, or missing, at the margin wanted. */
function leftCell({ atTarget, atOne }: Allowed, { mass, ledger }: Headroom): Cell {
  if (atTarget === null) return { text: "any mass holds", saved: null };
  const left = atTarget - mass;
  const spread = halfBand(ledger.mass);
  return {
    text: left < 0 ? `${massText(-left)} too heavy` : `${massText(left)} left`,
    also: [spread, atOne === null ? "" : `of ${massText(atTarget)}; ${massText(atOne)} at 1\u202f×`].filter(
      Boolean,
    ),
    tone: left < 0 ? "bad" : undefined,
    saved: shown(left),
    more: {
      [headed("allowed", "mass")]: shown(atTarget),
      [headed("allowed at 1 ×", "mass")]: atOne === null ? null : shown(atOne),
    },
  };
}

function allowedRows(columns: readonly Column[]) {
  const listed = ({ headroom }: Column) =>
    headroom.allowed.map((each) => {
      const degrees = formatFixed(each.angle, 0);
      const isWorst = each.title.startsWith("Worst");
      const title = isWorst ? "Headroom at the worst angle" : `Headroom, ${each.title} ${degrees}°`;
      return { ...each, key: title, title, angle: isWorst ? BEYOND : each.angle };
    });
  return rowsOfAll(columns, listed, (allowed, { headroom }) => leftCell(allowed, headroom), unitOf("mass"));
}

function tightestCell({ headroom }: Column): Cell {
  const [tightest] = tightestFirst(headroom);
  if (!tightest) return NOTHING;
  const { text, saved, tone } = leftCell(tightest, headroom);
  return { text, saved, tone, also: [`for ${tightest.name}`] };
}

const groupRows = (columns: readonly Column[]) =>
  rowsOfAll(
    columns,
    ({ headroom }) =>
      groupSums(headroom).map((sum) => {
        const title = `Mass, ${sum.group}`;
        return { ...sum, key: `group ${sum.group}`, title };
      }),
    (sum) => ({
      text: massText(sum.value),
      also: [halfBand(sum)].filter(Boolean),
      saved: shown(sum.value),
    }),
    unitOf("mass"),
  );

/** What each build weighs, part by part, and what it may weigh. */
export function mass(columns: readonly Column[]): RowGroup {
  return {
    title: "Mass",
    rows: [
      row("mass", "Mass", unitOf("mass"), columns, wholeCell),
      row("tightest", "Headroom where it is tightest", unitOf("mass"), columns, tightestCell),
      ...allowedRows(columns),
      ...groupRows(columns),
    ],
  };
}
