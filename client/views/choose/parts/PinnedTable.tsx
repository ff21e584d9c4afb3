import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { CompareTable } from "../../compare/CompareTable.tsx";
import { letterAt } from "../../compare/letterAt.ts";
import { type Cell, NOTHING, type RowGroup } from "../../compare/rows/row.ts";
import type { Compared } from "../../compare/useColumn.ts";
import type { Combination } from "../answers.ts";
import { valueText } from "../columns.ts";
import { buildFor } from "../openCombination.ts";
import { sizedRotorText, trustMarks } from "../words/combination.ts";

type Wants = ChooseRequest["wants"];

function heightCell({ values: { height } }: Combination): Cell {
  return height === null ? NOTHING : { text: valueText("height", height), saved: inUnit(height, "length") };
}

function limitsCell({ broken }: Combination): Cell {
  const meets = broken.length === 0 ? "yes" : "no";
  return { text: meets, saved: meets, tone: meets === "yes" ? undefined : "bad" };
}

function trustCell(combination: Combination): Cell {
  const marks = trustMarks(combination).map(({ word, title }) => `${word}, ${title}`);
  return { text: marks.join("; ") || "measured", saved: marks.join("; ") || "measured" };
}

function keptCell({ values: { keptTime } }: Combination): Cell {
  return keptTime === null
    ? NOTHING
    : { text: valueText("keptTime", keptTime), saved: inUnit(keptTime, "duration") };
}

/** How long a controller keeps the margin; none where it is no wish. */
function keptRows(
  combinations: readonly Combination[],
  { leastKeptTime, targetMargin }: Wants,
): RowGroup["rows"] {
  if (leastKeptTime === null) return [];
  const title = `A controller keeps ${marginText(targetMargin)} for`;
  return [{ key: "kept", title, unit: unitOf("duration"), cells: combinations.map(keptCell) }];
}

/** What the search says of its combinations beside what their builds are. */
function searched(combinations: readonly Combination[], wants: Wants): RowGroup {
  return {
    title: "In this search",
    rows: [
      { key: "limits", title: "Meets the limits", unit: "", cells: combinations.map(limitsCell) },
      ...keptRows(combinations, wants),
      { key: "height", title: "Total height", unit: unitOf("length"), cells: combinations.map(heightCell) },
      { key: "trust", title: "Rotor curve", unit: "", cells: combinations.map(trustCell) },
    ],
  };
}

/** Where it stands on the page, for links to it. */
export const PINNED_TABLE = "pinned-compared";

export interface PinnedTableProps {
  readonly book: Book;
  /** gives what a combination doesn't */
  readonly base: Build;
  readonly job: string;
  readonly wants: Wants;
  readonly combinations: readonly Combination[];
  readonly onPin: (index: number) => void;
}

/** Pinned combinations side by side, as the builds that they would be. */
export function PinnedTable({ book, base, job, wants, combinations, onPin }: PinnedTableProps) {
  const key = (combination: Combination) => `${job} ${combination.index}`;
  const compared = useMemo(
    () =>
      combinations.map((combination, i): Compared => {
        const build = buildFor(book, base, combination);
        return {
          key: key(combination),
          letter: letterAt(i),
          name: sizedRotorText(book, combination),
          build,
          stored: null,
        };
      }),
    [book, base, job, combinations.map(({ index }) => index).join(",")],
  );
  const besides = useMemo(() => [searched(combinations, wants)], [compared, wants]);
  const unpin = (gone: string) => {
    const combination = combinations.find((each) => key(each) === gone);
    if (combination) onPin(combination.index);
  };
  return (
    <section id={PINNED_TABLE} class="page-below choose-compared" aria-label="Pinned combinations compared">
      <h2>Pinned combinations side by side</h2>
      <CompareTable
        book={book}
        compared={compared}
        besides={besides}
        label="Pinned combinations side by side"
        onRemove={unpin}
      />
    </section>
  );
}
