import type { Book } from "../../../../shared/book/book.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { Column, Combination } from "../answers.ts";
import { columnSpec, columnsOf } from "../columns.ts";
import { isOpenCombination } from "../words/combination.ts";
import { Fact } from "./Fact.tsx";

interface FactListProps {
  readonly book: Book;
  /** null where the book no longer has it */
  readonly base: Build | null;
  readonly combination: Combination;
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

function factsOf(combination: Combination, wants: ChooseRequest["wants"]): Column[] {
  const asked = columnsOf(wants).map(({ key }) => key);
  return FACTS.filter(
    (column) => asked.includes(column) && !(isOpenCombination(combination) && DUCTED_ALONE.includes(column)),
  );
}

const factLabel = (combination: Combination, column: Column) =>
  column === "suction" && isOpenCombination(combination) ? "Thrust" : columnSpec(column).label;

/** What the combination has besides its margins, each figure with its working. */
export function FactList({ book, base, combination, wants }: FactListProps) {
  return (
    <dl class="choose-facts">
      {factsOf(combination, wants).map((column) => (
        <div key={column}>
          <dt>{factLabel(combination, column)}</dt>
          <dd>
            <Fact column={column} book={book} base={base} combination={combination} wants={wants} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
