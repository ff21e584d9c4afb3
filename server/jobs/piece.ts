import { bytesOf, type Chunk, chunkOver } from "../../shared/decide/choose/columns.ts";
import { foremostCombinations, frontOf, markForemost } from "../../shared/decide/choose/front.ts";
import { solveChunk } from "../../shared/decide/choose/solveChunk.ts";
import { gathered, type Results } from "../../shared/decide/choose/values.ts";
import { opened, type SealedQuestion, shared } from "./question.ts";

/** Combinations `from` up to `to`, not included, of one question. */
export interface Piece {
  readonly question: SealedQuestion;
  readonly from: number;
  readonly to: number;
  /** not 0 once nobody wants it any more, from {@link Job} */
  readonly stopped: Int32Array;
}

/** A solved piece: its columns lie in memory that all threads share. */
export interface SolvedPiece {
  readonly from: number;
  readonly count: number;
  /** combinations that meet every limit */
  readonly admissible: number;
  readonly columns: SharedArrayBuffer;
}

/** A question with its solved combinations, or some of them, and those that no other dominates in margin, mass and time. */
export interface Solved {
  readonly question: SealedQuestion;
  readonly pieces: readonly SolvedPiece[];
  /** rising */
  readonly front: Uint32Array;
}

function admissibleIn({ broken }: Chunk): number {
  let count = 0;
  for (const bits of broken) if (bits === 0) count += 1;
  return count;
}

/** Solves a piece in memory that all threads share. @returns null where its job was stopped while it waited @throws what the engine throws */
export function solvePiece({ question, from, to, stopped }: Piece): SolvedPiece | null {
  if (Atomics.load(stopped, 0) !== 0) return null;
  const { prepared } = opened(question);
  const columns = new SharedArrayBuffer(bytesOf(to - from));
  const chunk = solveChunk(prepared, from, to, chunkOver(from, to - from, columns));
  markForemost(prepared, chunk);
  return { from, count: to - from, admissible: admissibleIn(chunk), columns };
}

/** @returns the columns of pieces, in the order of their combinations */
export const columnsOf = (pieces: readonly SolvedPiece[]): Results =>
  gathered(pieces.map(({ from, count, columns }) => chunkOver(from, count, columns)));

/** @returns the combinations that no other dominates, in memory that all threads share */
export function frontOfAll({ question, pieces }: Omit<Solved, "front">): Uint32Array {
  const results = columnsOf(pieces);
  const front = frontOf(opened(question).prepared, results, undefined, foremostCombinations(results));
  return new Uint32Array(shared(new Uint8Array(front.buffer, front.byteOffset, front.byteLength)));
}
