import { useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { go, href, type ViewName } from "../../../app/router.ts";
import { ApiError } from "../../../state/api.ts";
import { currentBook as book } from "../../../state/book.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { compareAddress } from "../../compare/asked.ts";
import { letterAt } from "../../compare/letterAt.ts";
import type { Combination } from "../answers.ts";
import { storeCombination } from "../openCombination.ts";
import { MOST_PINNED } from "../state/shown.ts";
import { restText, sizedRotorText, sizeText } from "../words/combination.ts";
import { PINNED_TABLE } from "./PinnedTable.tsx";

export interface PinnedProps {
  readonly book: Book;
  readonly base: Build | null;
  readonly job: string;
  readonly pins: readonly number[];
  /** those of them that were read */
  readonly combinations: readonly Combination[];
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
}

/** Which combinations are pinned; stored as builds they are laid over one another in Match and in Attitudes, and stand side by side in Compare. */
export function Pinned(props: PinnedProps) {
  const { book, combinations } = props;
  if (props.pins.length === 0)
    return (
      <section aria-label="Pinned combinations">
        <h2>Pinned</h2>
        <p class="quiet small">
          None. Up to {MOST_PINNED} combinations can be pinned, in the plot or in the table, and compared side
          by side.
        </p>
      </section>
    );
  return (
    <section class="choose-pinned" aria-label="Pinned combinations">
      <h2>Pinned</h2>
      <ul class="choose-items">
        {combinations.map((combination, i) => (
          <li key={combination.index}>
            <b class="choose-letter">{letterAt(i)}</b>{" "}
            <button type="button" class="plain" onClick={() => props.onLook(combination.index)}>
              {sizedRotorText(book, combination)}
            </button>{" "}
            <button type="button" class="plain small quiet" onClick={() => props.onPin(combination.index)}>
              unpin<span class="visually-hidden"> {letterAt(i)}</span>
            </button>
            <small class="quiet">{restText(book, combination)}</small>
          </li>
        ))}
      </ul>
      {props.base && combinations.length > 1 && (
        <p>
          <a href={`#${PINNED_TABLE}`}>Side by side, figure by figure</a>
        </p>
      )}
      <SideBySide {...props} />
    </section>
  );
}

const laidOver =
  (view: ViewName) =>
  ([first, ...others]: readonly string[]): string =>
    href(view, first, others.length > 0 ? { over: others.join(",") } : {});

/** Where stored combinations are seen together. */
const LAID = [
  { label: "Side by side in Match", addressOf: laidOver("match") },
  { label: "In Attitudes", addressOf: laidOver("attitudes") },
  { label: "In Compare", addressOf: compareAddress },
] as const;

/** Stores the pinned combinations and lays them over one another in another view. */
function SideBySide({ base, job, combinations }: PinnedProps) {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const lay = async (addressOf: (ids: readonly string[]) => string) => {
    if (!base) return;
    setBusy(true);
    try {
      const ids: string[] = [];
      for (const [i, combination] of combinations.entries()) {
        if (!book.value) return;
        ids.push(
          await storeCombination(
            book.value,
            base,
            job,
            combination,
            `${base.name}, chosen ${letterAt(i)}, ${sizeText(combination.diameter)}`,
          ),
        );
      }
      go(addressOf(ids));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
      setBusy(false);
    }
  };
  return (
    <>
      <p class="choose-buttons">
        {LAID.map(({ label, addressOf }) => (
          <BusyButton
            key={label}
            type="button"
            busy={busy}
            disabled={base === null}
            onClick={() => void lay(addressOf)}
          >
            {label}
          </BusyButton>
        ))}
      </p>
      <p class="quiet small">Each pinned combination is first stored as a build, once.</p>
      {problem && <p class="bad">{problem}</p>}
    </>
  );
}
