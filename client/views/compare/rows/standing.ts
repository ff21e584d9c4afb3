import { verdictMarks } from "../../../../shared/book/marks.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import { marginText, targetText } from "../../../../shared/decide/verdict/figures.ts";
import { isDestroyed } from "../../../../shared/decide/verdict/states.ts";
import { sentenceOf, stateWords } from "../../../../shared/decide/verdict/words.ts";
import { isLacking } from "../../../state/outcome.ts";
import { sureText } from "../../../ui/uncertaintyWords.ts";
import { sampledAs } from "../../../ui/verdict/bandFigures.ts";
import { boardOf, boardOver } from "../../../ui/working/board.ts";
import { chanceTitle } from "../../../ui/working/SampledFigure.tsx";
import { sampledOf } from "../../../ui/working/sampled.ts";
import type { Column } from "../useColumn.ts";
import { type Cell, NOTHING, plain, type RowGroup, row } from "./row.ts";

const PERCENT = 100;

function verdictCell(book: Book, { verdict, outcome }: Column): Cell {
  if (!verdict) {
    const lacks = (outcome.resolved?.missing ?? []).map(({ message }) => message);
    return plain(isLacking(outcome) ? "not known yet" : "no answer", lacks);
  }
  const words = stateWords(verdict);
  return {
    text: words,
    also: [sentenceOf(verdict)],
    state: verdict.state,
    marks: verdictMarks(book, outcome),
    saved: words,
  };
}

/** As the band says it: of a build that doesn't last there is none. */
function chanceCell({ verdict, sure, outcome }: Column): Cell | null {
  if (!verdict || isDestroyed(verdict.state) || verdict.reason.kind === "standing") return NOTHING;
  const { chance } = verdict;
  if (chance) {
    const at = sampledAs(chance, sure);
    return {
      text: sureText(chance.holds),
      also: [`on ${chance.name}`],
      saved: PERCENT * chance.holds,
      ...(at
        ? {
            working: {
              board: () => sampledOf(outcome, sure),
              title: chanceTitle(at),
              value: chance.holds,
            },
          }
        : {}),
    };
  }
  return sure.busy ? null : plain("–", ["no uncertainty is stated"]);
}

function leastCell(book: Book, { verdict, outcome }: Column): Cell {
  const least = verdict?.least ?? null;
  if (!least) return NOTHING;
  const { margin, name, angle, driving, over } = least;
  const board = () => (over ? boardOver(book, outcome, over.name) : boardOf(book, outcome));
  const title = `margin at ${angle.toFixed(0)}°, ${driving ? "driving" : "parked"}`;
  const working = margin > 0 ? { working: { board, title, value: margin } } : {};
  return { text: marginText(margin), also: [`on ${name}`], saved: margin, ...working };
}

/** What each build comes to. */
export function standing(book: Book, columns: readonly Column[]): RowGroup {
  return {
    title: "Verdict",
    rows: [
      row("verdict", "Verdict", "", columns, (column) => verdictCell(book, column)),
      row("least", "Least margin", "×", columns, (column) => leastCell(book, column)),
      row("target", "Margin wanted", "×", columns, ({ outcome: { build } }) => ({
        text: targetText(build.targetMargin),
        saved: build.targetMargin,
      })),
      row("chance", "Chance of holding", "%", columns, chanceCell),
    ],
  };
}
