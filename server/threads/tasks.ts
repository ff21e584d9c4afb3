import { foretoldIn } from "../foretelling.ts";
import { frontOfAll, solvePiece } from "../jobs/piece.ts";
import { questionOf } from "../jobs/question.ts";
import { bestOf, combinationsOf, combinationText, missedText, pageOf, pointsText } from "../jobs/results.ts";
import { judged } from "../jobs/shortlist.ts";
import { bookFitsFound } from "../routes/bookFits.ts";
import { calibrationFound } from "../routes/calibration.ts";
import { computedText } from "../routes/computations.ts";
import { nextTestsFound } from "../routes/nextTests.ts";
import { printSeriesText } from "../routes/printSeries.ts";
import { foretoldAfter, recordText } from "../routes/record.ts";
import { verdictText } from "../routes/verdict.ts";
import { copyDaily } from "../store/daily.ts";
import { backupContents } from "./backupBook.ts";
import { checkedBody } from "./bodies.ts";
import { changeWhole } from "./wholeBook.ts";

/** What a thread can be asked to do: input and answer travel as structured clones, bytes of an answer without copying. */
export const TASKS = {
  /** makes the question of a choosing from the book */
  question: questionOf,
  /** solves a piece of it */
  solve: solvePiece,
  /** finds the best combinations of pieces, while the rest is solved */
  best: bestOf,
  /** finds the combinations that no other dominates */
  front: frontOfAll,
  /** a page of the combinations, by index and in full */
  page: pageOf,
  combinations: combinationsOf,
  combination: combinationText,
  /** points of a plot */
  points: pointsText,
  /** what keeps combinations out */
  missed: missedText,
  /** how sure one combination is */
  judge: judged,
  /** changes the book as a whole */
  whole: changeWhole,
  /** makes the day's copy of the book where it is due */
  daily: copyDaily,
  /** looks into a copy of the book */
  backup: backupContents,
  /** reads and checks a large body */
  check: checkedBody,
  /** answers a request from its body alone */
  compute: computedText,
  /** finds which bench tests would tell most of a stored build */
  nextTests: nextTestsFound,
  /** finds which sizes to print and test next for a stored build */
  printSeries: printSeriesText,
  /** brings together what pull and leak tests tell of a stored build */
  calibration: calibrationFound,
  /** says what the tests of the book come to, part by part */
  bookFits: bookFitsFound,
  /** judges a stored build */
  verdict: verdictText,
  /** predicts a test by the book as it was written into */
  foretell: foretoldIn,
  /** sets predictions beside what was measured */
  record: recordText,
  /** predicts tests afterwards that no prediction was kept of */
  foretellAfterwards: foretoldAfter,
  /** does nothing: a thread that starts for it looks for what waits */
  wake: (_: null) => null,
} as const;

export type TaskName = keyof typeof TASKS;
export type Input<N extends TaskName> = Parameters<(typeof TASKS)[N]>[0];
export type Output<N extends TaskName> = ReturnType<(typeof TASKS)[N]>;

/** Does one task on the thread that calls it. */
export const done = <N extends TaskName>(name: N, input: Input<N>): Output<N> =>
  (TASKS[name] as (input: Input<N>) => Output<N>)(input);
