import type { Book } from "../../../../shared/book/book.ts";
import { sampledBoard, sampledMargin } from "../../../../shared/book/uncertainty/workings.ts";
import { uncertaintyAsked } from "../../../../shared/book/uncertaintyAsked.ts";
import {
  leastOf,
  type PlacedAttitude,
  placed,
  spreadsOf,
  type WantedSpread,
} from "../../../../shared/decide/choose/wantedLeast.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import {
  type Board,
  type Description,
  type Row,
  subscript,
  type Working,
  workedOut,
} from "../../../../shared/physics/working.ts";
import { type Outcome, solve } from "../../../state/outcome.ts";
import type { UncertaintyReply } from "../../../state/uncertainty/answer.ts";
import { asking } from "../../../threads/ask.ts";
import type { Question } from "../../../threads/tasks.ts";
import { NO_BOARD } from "../../../ui/working/board.ts";
import type { Combination } from "../answers.ts";
import { buildFor } from "../openCombination.ts";

const DOC = "docs/method/choosing.md";

type Wants = Pick<ChooseRequest["wants"], "attitudes">;

/** A combination, and what its search asks of it. */
interface OfCombination {
  readonly book: Book;
  /** gives what a combination doesn't */
  readonly base: Build;
  readonly combination: Combination;
  readonly wants: Wants;
}

/** Titles of the workings of what a shortlist says. */
export const LEAST_TITLE = "margin on the hardest attitude that is wanted";
export const REACHED_TITLE = "margin that 95 of 100 reach";
export const CHANCE_TITLE = "chance of holding";

const EACH = "Each attitude by itself: all of them together hold less often than the least.";

const nameOf = ({ angle, mode }: PlacedAttitude) => `${angle.toFixed(0)}°, ${mode}`;

/** A row an attitude, those without a value left out. */
function rowsOf<T extends PlacedAttitude>(
  attitudes: readonly T[],
  value: (of: T) => number | null,
  called: (of: T, below: string) => Description,
): Row[] {
  return attitudes.flatMap((each, i): Row[] => {
    const found = value(each);
    return found === null ? [] : [[called(each, subscript(i + 1)), found]];
  });
}

/** @returns the attitudes that a search wants, of a solved combination */
export function wantedOf({ prediction }: Outcome, { attitudes }: Wants): PlacedAttitude[] {
  return prediction ? placed(attitudes, () => prediction.worst) : [];
}

/** @returns the margin of a combination from those of the wanted attitudes, as their own workings have them */
export function leastWorking(
  { values: { margin } }: Combination,
  wanted: readonly PlacedAttitude[],
  solved: Pick<Board, "workings">,
): Working[] {
  if (margin === null || margin === 0) return [];
  const marginOf = ({ angle, mode }: PlacedAttitude) =>
    solved.workings.find(({ title }) => title === `margin at ${angle.toFixed(0)}°, ${mode}`)?.result.value ??
    null;
  const rows = rowsOf(wanted, marginOf, (each, below) => [`margin${below}`, `margin at ${nameOf(each)}`, ""]);
  return [
    workedOut(
      {
        title: LEAST_TITLE,
        equation: "margin = min(margin_i)",
        output: ["margin", ""],
        source: DOC,
        assumptions: ["An attitude that needs no pull doesn't count."],
      },
      rows,
      margin,
    ),
  ];
}

function reachedWorkings(spreads: readonly WantedSpread[]): Working[] {
  const { chance, margin5 } = leastOf(spreads);
  const reached = rowsOf(
    spreads,
    ({ spread }) => spread.p5,
    (each, below) => [`margin${below}`, `margin that 95 of 100 reach at ${nameOf(each)}`, ""],
  );
  const chances = rowsOf(
    spreads,
    ({ spread }) => spread.holds,
    (each, below) => [`P${below}`, `chance of holding at ${nameOf(each)}`, ""],
  );
  const told = { source: DOC, assumptions: [EACH, "Beside the joints of the surface."] };
  const least: Working = workedOut(
    { ...told, title: CHANCE_TITLE, equation: "P = min(P_i)", output: ["P", ""] },
    chances,
    chance,
  );
  if (margin5 === null) return [least];
  return [
    workedOut(
      { ...told, title: REACHED_TITLE, equation: "margin = min(margin_i)", output: ["margin", ""] },
      reached,
      margin5,
    ),
    least,
  ];
}

type Sampler = (question: Question<"uncertainty">) => Promise<UncertaintyReply>;

/** Samples in the thread that samples the build on the screen. */
const inThread: Sampler = (question) =>
  new Promise((resolve, reject) => {
    asking("uncertainty").put(question, (end) =>
      end ? resolve(end.reply) : reject(new Error("The sampling thread ended.")),
    );
  });

/**
 * How a shortlist's margin and chance came about: sampled anew, as the search samples it.
 *
 * @param sample - what samples it
 * @returns the least of the wanted attitudes, each down to its samples; none where the combination has no numbers
 * @throws {Error} where its samples have no answer
 */
export async function sampledCombinationBoard(
  { book, base, combination, wants }: OfCombination,
  sample: Sampler = inThread,
): Promise<Board> {
  const outcome = solve(book, buildFor(book, base, combination));
  const question = uncertaintyAsked(book, outcome);
  const wanted = wantedOf(outcome, wants);
  if (!question || !outcome.resolved) return NO_BOARD;
  const angles = [...new Set(wanted.map(({ angle }) => angle))];
  const { input, sources } = question;
  const asked = { ...question.asked, angles };
  const reply = await sample({ input, joints: null, asked });
  if ("problem" in reply) throw new Error(reply.problem);
  const spreads = spreadsOf(wanted, reply.answered.attitudes);
  const of = { input, resolved: outcome.resolved, asked, sources, shares: reply.answered.shares };
  const figures = spreads.map(({ angle, mode, spread }) => sampledMargin(angle, mode, spread));
  const sampled = sampledBoard(of, figures);
  // Behind the attitudes' own: the least has the value of one of them, and leads down to it.
  return { ...sampled, workings: [...sampled.workings, ...reachedWorkings(spreads)] };
}
