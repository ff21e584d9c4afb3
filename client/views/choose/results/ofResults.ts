import type { Book } from "../../../../shared/book/book.ts";
import type { ChooseJob } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { Combination } from "../answers.ts";
import type { Shown } from "../state/shown.ts";
import type { Results } from "../useResults.ts";

/** What every section of a search's results is made of, and what is done with a combination in it. */
export interface OfResults {
  readonly book: Book;
  /** the build that the rest is as in; null where it is gone */
  readonly base: Build | null;
  readonly job: ChooseJob;
  readonly known: Results;
  readonly shown: Shown;
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
  readonly onOpen: (combination: Combination) => void;
}
