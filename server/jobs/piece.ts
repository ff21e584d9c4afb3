import { markForemost } from "../../shared/decide/choose/front.ts";
import { type Prepared, prepare } from "../../shared/decide/choose/prepare.ts";
import { type SetUncertainty, setUncertainty } from "../../shared/decide/choose/shortlist.ts";
import { solveChunk } from "../../shared/decide/choose/solveChunk.ts";
import type { Piece, SetToSample } from "./runner.ts";

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
