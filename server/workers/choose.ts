import { move } from "piscina";
import { nonDominated } from "../../shared/decide/choose/front.ts";
import type { SetUncertainty } from "../../shared/decide/choose/shortlist.ts";
import { solvePiece, uncertaintyOfSet } from "../jobs/piece.ts";
import type { Contest, Piece, SetToSample } from "../jobs/runner.ts";

/** Solves a piece; its memory is handed back without copying. */
export const solve = (piece: Piece): ArrayBuffer => move(solvePiece(piece)) as ArrayBuffer;

/** Finds how sure one set is. */
export const doubt = (set: SetToSample): SetUncertainty => uncertaintyOfSet(set);

/** Finds the sets that no other dominates. */
export const front = ({ keys, among }: Contest): Uint32Array => nonDominated(keys, among);
