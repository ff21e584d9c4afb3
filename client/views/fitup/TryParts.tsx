import type { Book } from "../../../shared/book/book.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { nameWith, useNewBuild } from "../../state/useNewBuild.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { SelectField } from "../../ui/Field.tsx";
import type { Exchange } from "../../ui/partChoices.ts";
import { choicesFor } from "./tryParts.ts";

const ENDING = ", other parts";

export interface TryPartsProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  readonly exchange: Exchange;
  readonly onExchange: (exchange: Exchange) => void;
}

/** Other parts of the book in the same housing: each says how it would close. */
export function TryParts({ book, build, exchange, onExchange }: TryPartsProps) {
  const { problem, sending, make } = useNewBuild("fit-up");
  const tried = { ...build.data, ...exchange };
  const lists = choicesFor(book, tried);
  const isTried = Object.keys(exchange).length > 0;
  const keep = () => make({ ...tried, name: nameWith(build.data.name, ENDING) });
  if (lists.length === 0) return null;
  return (
    <section class="fit-try" aria-label="Try other parts">
      <h2>Try other parts</h2>
      {lists.map(({ label, value, choices }) => (
        <SelectField
          key={label}
          label={label}
          value={value}
          options={choices}
          onChange={(chosen) => {
            const found = choices.find((each) => each.value === chosen);
            if (found) onExchange({ ...exchange, ...found.exchange });
          }}
        />
      ))}
      {isTried && (
        <p>
          <BusyButton type="button" class="primary" busy={sending !== null} onClick={() => void keep()}>
            Make a build with these parts
          </BusyButton>{" "}
          <button type="button" onClick={() => onExchange({})}>
            Back to its own parts
          </button>
        </p>
      )}
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}
