import { type Book, findById } from "../../../../shared/book/book.ts";
import { surfaceRoughness } from "../../../../shared/book/roughnessBasis.ts";
import { roughnessBoard } from "../../../../shared/book/roughnessWorkings.ts";
import type { Board } from "../../../../shared/physics/working.ts";
import { NO_BOARD } from "../../../ui/working/board.ts";
import { motorFitBoard } from "../../curves/fitWorkings.ts";
import { motorPage } from "../../curves/motor/motorData.ts";
import { packPage } from "../../curves/pack/packData.ts";
import { packFitBoard } from "../../curves/pack/packWorkings.ts";

/** @returns how the figures came about that tests say of a part; none of a part that has no such figures */
export function partBoard(book: Book, collection: string, id: string): Board {
  const motor = collection === "motors" ? motorPage(book, id) : null;
  if (motor) return motorFitBoard(motor);
  const pack = collection === "packs" ? packPage(book, id) : null;
  if (pack) return packFitBoard(pack);
  const surface = collection === "surfaces" ? findById(book.surfaces, id) : null;
  return surface ? roughnessBoard(surfaceRoughness(book, surface)) : NO_BOARD;
}
