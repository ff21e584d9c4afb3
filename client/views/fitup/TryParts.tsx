import { useState } from "preact/hooks";
import type { Book } from "../../../shared/book/book.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { navigate, stayer } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { notice } from "../../state/notice.ts";
import { saveProblem, sendRecord } from "../../state/sendRecord.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { SelectField } from "../../ui/Field.tsx";
import { choicesFor, type Exchange } from "./tryParts.ts";

const MOST_LETTERS = 120;
const ENDING = ", other parts";

export interface TryPartsProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  readonly exchange: Exchange;
  readonly onExchange: (exchange: Exchange) => void;
}

/** Other parts of the book in the same housing: each says how it would close. */
export function TryParts({ book, build, exchange, onExchange }: TryPartsProps) {
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const tried = { ...build.data, ...exchange };
  const lists = choicesFor(book, tried);
  const isTried = Object.keys(exchange).length > 0;
  const keep = async () => {
    const name = `${build.data.name.slice(0, MOST_LETTERS - ENDING.length)}${ENDING}`;
    const isHere = stayer();
    setBusy(true);
    try {
      const record = await sendRecord<Build>("builds", null, { ...tried, name }).outcome;
      if (record && isHere()) navigate("fit-up", record.id);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      const why = saveProblem(error, true);
      if (!isHere()) notice.value = `The build “${name}” was not saved. ${why}`;
      setProblem(why);
    } finally {
      setBusy(false);
    }
  };
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
          <BusyButton type="button" class="primary" busy={isBusy} onClick={() => void keep()}>
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
