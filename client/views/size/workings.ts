import { sizeBuild } from "../../../shared/book/size/sides.ts";
import { sizeWorkings } from "../../../shared/decide/size/workings.ts";
import type { Board } from "../../../shared/physics/working.ts";
import { NO_BOARD } from "../../ui/working/board.ts";
import { type Answered, bestOf, type Sized } from "./answer.ts";
import type { Put } from "./question.ts";

/** @returns how the figures of a family's best size came about; nothing where no size keeps every limit */
export function bestBoard({ sides, question: { hold } }: Put, answered: Answered, sized: Sized): Board {
  const side = sides.find(({ kind }) => kind === sized.kind);
  const family = side?.families.find(({ id }) => id === sized.id);
  const row = bestOf(sized);
  if (!side || !family || !row) return NO_BOARD;
  const { pull } = answered;
  const duty = sized.kind === "ducted" ? answered.duty : null;
  const build = sizeBuild(side.numbers, family);
  return { workings: sizeWorkings({ build, hold, pull, duty, row }), origins: [] };
}
