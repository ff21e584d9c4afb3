import { markForemost } from "../../shared/decide/choose/front.ts";
import { type Prepared, prepare } from "../../shared/decide/choose/prepare.ts";
import type { Problem } from "../../shared/decide/choose/problem.ts";
import { type SetUncertainty, setUncertainty } from "../../shared/decide/choose/shortlist.ts";
import { solveChunk } from "../../shared/decide/choose/solveChunk.ts";
import type { StatedUncertainty } from "../../shared/decide/uncertainty.ts";

/** Sets `from` up to `to`, not included, of one question. */
export interface Piece {
  /** names the question, so that a worker makes it ready only once */
  readonly key: string;
  readonly problem: Problem;
  readonly from: number;
  readonly to: number;
}

/** Points to compare: by index the values of each objective, larger is better, and which of them count. */
export interface Contest {
  readonly keys: readonly Float64Array[];
  readonly among: Uint32Array;
}

/** One set of a question whose doubt is asked for. */
export interface SetToSample {
  readonly key: string;
  readonly problem: Problem;
  readonly index: number;
  readonly asked: Omit<StatedUncertainty, "angles">;
}

/** Questions made ready that a thread keeps: as many as jobs are likely to run at once. */
const KEPT = 8;
const ready = new Map<string, Prepared>();

function preparedOf({ key, problem }: Pick<Piece, "key" | "problem">): Prepared {
  const known = ready.get(key);
  if (known) return known;
  const made = prepare(problem);
  const [oldest] = ready.keys();
  if (ready.size >= KEPT && oldest !== undefined) ready.delete(oldest);
  ready.set(key, made);
  return made;
}

/** @returns the columns' memory of a solved piece @throws what the engine throws */
export function solvePiece(piece: Piece): ArrayBuffer {
  const prepared = preparedOf(piece);
  const chunk = solveChunk(prepared, piece.from, piece.to);
  markForemost(prepared, chunk);
  return chunk.buffer;
}

/** @returns chance and spread of one set @throws as the engine */
export function uncertaintyOfSet({ index, asked, ...of }: SetToSample): SetUncertainty {
  return setUncertainty(preparedOf(of), index, asked);
}
