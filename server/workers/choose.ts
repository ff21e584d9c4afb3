import { move } from "piscina";
import { solvePiece } from "../jobs/piece.ts";
import type { Piece } from "../jobs/runner.ts";

/** One thread of the pool: solves the piece it is handed and hands its memory back without copying. */
export default (piece: Piece): ArrayBuffer => move(solvePiece(piece)) as ArrayBuffer;
