import { move } from "piscina";
import { nonDominated } from "../../shared/decide/choose/front.ts";
import { solvePiece } from "../jobs/piece.ts";
import type { Contest, Piece } from "../jobs/runner.ts";

/** Solves a piece; its memory is handed back without copying. */
export const solve = (piece: Piece): ArrayBuffer => move(solvePiece(piece)) as ArrayBuffer;

/** Finds the sets that no other dominates. */
export const front = ({ keys, among }: Contest): Uint32Array => nonDominated(keys, among);
