import type { Book } from "../../../../shared/book/resolve.ts";
import type { Spread } from "../../../../shared/decide/uncertainty.ts";
import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import { isDestroyed } from "../../../../shared/decide/verdict/states.ts";
import { rangeText, sureText } from "../../../ui/uncertaintyWords.ts";
import { firstInWords, gradeOf } from "../../../ui/verdictWords.ts";
import { boardOf } from "../../../ui/working/board.ts";
import { chanceTitle, rangeTitle } from "../../../ui/working/SampledFigure.tsx";
import { sampledOf } from "../../../ui/working/sampled.ts";
import { type StripAttitude, spreadsOf, stripOf } from "../../match/strip/stripOf.ts";
import type { Column } from "../useColumn.ts";
import { BEYOND, type Cell, type Line, type Piece, type RowGroup, rowsOfAll } from "./row.ts";

const PERCENT = 100;
const STATES = ["parked", "driving"] as const;

/** One margin of one attitude. */
interface Held {
  readonly key: string;
  readonly title: string;
  readonly angle: number;
  readonly attitude: StripAttitude;
  readonly state: (typeof STATES)[number];
}

function heldOf({ outcome }: Column): Held[] {
  return stripOf(outcome).flatMap((attitude) =>
    STATES.map((state) => {
      const isWorst = attitude.key === "worst";
      const name = isWorst ? "Worst angle" : `${attitude.title} ${attitude.angle.toFixed(0)}°`;
      const angle = isWorst ? BEYOND : attitude.angle;
      return { key: `${name} ${state}`, title: `${name}, ${state}`, angle, attitude, state };
    }),
  );
}

/** Of a build that bursts or burns no chance is said. */
function spreadOf({ attitude, state }: Held, { verdict, sure }: Column): Spread | null {
  return verdict && isDestroyed(verdict.state) ? null : spreadsOf(attitude, sure)[state];
}

function sampled(spread: Spread | null): Cell["more"] {
  if (!spread) return {};
  return { "5 %, ×": spread.p5, "95 %, ×": spread.p95, "chance of holding, %": PERCENT * spread.holds };
}

/** "98 % chance, 1.79 to 2.46 ×", each opening to its working. */
function spreadLine(spread: Spread, { attitude: { angle }, state }: Held, { outcome, sure }: Column): Line {
  const board = () => sampledOf(outcome, sure);
  const of = { angle, state };
  const range = rangeText(spread);
  const chance: Piece = {
    text: sureText(spread.holds),
    working: { board, title: chanceTitle(of), value: spread.holds },
  };
  if (!range || spread.p5 === null) return [chance, " chance"];
  return [chance, " chance, ", { text: range, working: { board, title: rangeTitle(of), value: spread.p5 } }];
}

function marginCell(book: Book, held: Held, column: Column): Cell {
  const { attitude, state } = held;
  const { outcome, verdict } = column;
  const margin = attitude[state];
  const modes = attitude[`${state}Modes`];
  const { grade, word } = gradeOf(margin, outcome.build.targetMargin, verdict?.state ?? null);
  const spread = spreadOf(held, column);
  const angle = attitude.key === "worst" ? [`at ${attitude.angle.toFixed(0)}°`] : [];
  return {
    text: marginText(margin),
    also: [
      ...angle,
      ...(margin === null ? [] : [`${word}; ${firstInWords(modes)} first`]),
      ...(spread ? [spreadLine(spread, held, column)] : []),
    ],
    tone: grade,
    saved: margin,
    more: sampled(spread),
    ...(margin === null || margin === 0
      ? {}
      : {
          working: {
            board: () => boardOf(book, outcome),
            title: `margin at ${attitude.angle.toFixed(0)}°, ${state}`,
            value: margin,
          },
        }),
  };
}

/** What each build holds on every attitude, parked and driving. */
export function margins(book: Book, columns: readonly Column[]): RowGroup {
  const rows = rowsOfAll(columns, heldOf, (held, column) => marginCell(book, held, column), "×");
  return { title: "Margins", rows };
}
