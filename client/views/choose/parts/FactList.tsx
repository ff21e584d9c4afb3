import type { Book } from "../../../../shared/book/book.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { Column, Combination } from "../answers.ts";
import { columnSpec, columnsOf } from "../columns.ts";
import { isOpenSet } from "../words/set.ts";
import { Fact } from "./Fact.tsx";

interface FactListProps {
  readonly book: Book;
  /** null where the book no longer has it */
  readonly base: Build | null;
  readonly set: Combination;
  readonly wants: ChooseRequest["wants"];
}

/** In the order in which they stand. */
export const FACTS: readonly Column[] = [
  "mass",
  "time",
  "keptTime",
  "windingTemperature",
  "rotorFactor",
  "height",
  "price",
  "suction",
  "pressure",
  "flow",
  "speed",
  "packCurrent",
];

/** What an open propeller has not. */
const DUCTED_ALONE: readonly Column[] = ["rotorFactor", "pressure", "flow"];

function factsOf(set: Combination, wants: ChooseRequest["wants"]): Column[] {
  const asked = columnsOf(wants).map(({ key }) => key);
  return FACTS.filter(
    (column) => asked.includes(column) && !(isOpenSet(set) && DUCTED_ALONE.includes(column)),
  );
}

const factLabel = (set: Combination, column: Column) =>
  column === "suction" && isOpenSet(set) ? "Thrust" : columnSpec(column).label;

/** What the combination has besides its margins, each figure with its working. */
export function FactList({ book, base, set, wants }: FactListProps) {
  return (
    <dl class="choose-facts">
      {factsOf(set, wants).map((column) => (
        <div key={column}>
          <dt>{factLabel(set, column)}</dt>
          <dd>
            <Fact column={column} book={book} base={base} set={set} wants={wants} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
