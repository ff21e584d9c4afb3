import { useMemo, useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { stateWords } from "../../../../shared/decide/verdict/words.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { navigate, type ViewName } from "../../../app/router.ts";
import { ApiError } from "../../../state/api.ts";
import { currentBook as book } from "../../../state/book.ts";
import { solve } from "../../../state/outcome.ts";
import { verdictBeside } from "../../../state/verdict/found.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { StateMark } from "../../../ui/verdict/StateMark.tsx";
import type { ChosenSet, Column } from "../answers.ts";
import { cellText, columnSpec, headUnit } from "../columns.ts";
import { buildFor, storeSet } from "../openSet.ts";
import { MOST_PINNED } from "../state/shown.ts";
import { letterOf, mmText, restText, sizedRotorText, trustMarks } from "../words/set.ts";

const COMPARED: readonly Column[] = [
  "margin",
  "mass",
  "time",
  "windingTemperature",
  "rotorFactor",
  "height",
  "price",
];

export interface PinnedProps {
  readonly book: Book;
  readonly base: Build | null;
  readonly job: string;
  readonly pins: readonly number[];
  /** those of them that were read */
  readonly sets: readonly ChosenSet[];
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
}

/** Pinned sets side by side; stored as builds they are laid over one another in Match and in Attitudes. */
export function Pinned(props: PinnedProps) {
  const { book, sets } = props;
  if (props.pins.length === 0)
    return (
      <section aria-label="Pinned sets">
        <h2>Pinned</h2>
        <p class="quiet small">
          None. Up to {MOST_PINNED} sets can be pinned, in the plot or in the table, and compared side by
          side.
        </p>
      </section>
    );
  return (
    <section class="choose-pinned" aria-label="Pinned sets">
      <h2>Pinned</h2>
      <ul class="choose-items">
        {sets.map((set, i) => (
          <li key={set.index}>
            <b class="choose-letter">{letterOf(i)}</b>{" "}
            <button type="button" class="plain" onClick={() => props.onLook(set.index)}>
              {sizedRotorText(book, set)}
            </button>{" "}
            <button type="button" class="plain small quiet" onClick={() => props.onPin(set.index)}>
              unpin<span class="visually-hidden"> {letterOf(i)}</span>
            </button>
            <small class="quiet">{restText(book, set)}</small>
          </li>
        ))}
      </ul>
      <Compared {...props} />
      <SideBySide {...props} />
    </section>
  );
}

function Compared({ book, base, sets }: PinnedProps) {
  const verdicts = useMemo(
    () => sets.map((set) => base && verdictBeside(book, solve(book, buildFor(book, base, set)))),
    [book, base, sets],
  );
  return (
    <ScrollTable label="Pinned sets side by side">
      <table class="choose-grid">
        <thead>
          <tr>
            <th scope="col" class="choose-head">
              <span class="visually-hidden">Figure</span>
            </th>
            {sets.map((set, i) => (
              <th key={set.index} scope="col" class="choose-head">
                {letterOf(i)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {base && (
            <tr>
              <th scope="row">Verdict</th>
              {verdicts.map((verdict, i) => (
                <td key={sets[i].index}>
                  {verdict ? <StateMark state={verdict.state} words={stateWords(verdict)} /> : "–"}
                </td>
              ))}
            </tr>
          )}
          {COMPARED.map((column) => (
            <Figure key={column} column={column} sets={sets} />
          ))}
          <tr>
            <th scope="row">Rotor</th>
            {sets.map((set) => (
              <td key={set.index}>
                {trustMarks(set).map(({ word, title }) => (
                  <Mark key={word} word={word} title={title} />
                ))}
                {trustMarks(set).length === 0 && <small class="quiet">measured</small>}
              </td>
            ))}
          </tr>
          <tr>
            <th scope="row">Meets the limits</th>
            {sets.map((set) => (
              <td key={set.index} class={set.broken.length === 0 ? undefined : "bad"}>
                {set.broken.length === 0 ? "yes" : "no"}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </ScrollTable>
  );
}

function Figure({ column, sets }: { readonly column: Column; readonly sets: readonly ChosenSet[] }) {
  const { label } = columnSpec(column);
  return (
    <tr>
      <th scope="row">
        {label}
        {headUnit(column)}
      </th>
      {sets.map((set) => (
        <td key={set.index}>{cellText(column, set.values[column])}</td>
      ))}
    </tr>
  );
}

/** Stores the pinned sets and lays them over one another in another view. */
function SideBySide({ base, job, sets }: PinnedProps) {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const lay = async (view: ViewName) => {
    if (!base) return;
    setBusy(true);
    try {
      const ids: string[] = [];
      for (const [i, set] of sets.entries()) {
        if (!book.value) return;
        ids.push(
          await storeSet(
            book.value,
            base,
            job,
            set,
            `${base.name}, chosen ${letterOf(i)}, ${mmText(set.diameter)}`,
          ),
        );
      }
      const [first, ...others] = ids;
      navigate(view, first, others.length > 0 ? { over: others.join(",") } : {});
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
      setBusy(false);
    }
  };
  return (
    <>
      <p class="choose-buttons">
        <BusyButton type="button" busy={busy} disabled={base === null} onClick={() => void lay("match")}>
          Side by side in Match
        </BusyButton>
        <BusyButton type="button" busy={busy} disabled={base === null} onClick={() => void lay("attitudes")}>
          In Attitudes
        </BusyButton>
      </p>
      <p class="quiet small">Each pinned set is first stored as a build, once.</p>
      {problem && <p class="bad">{problem}</p>}
    </>
  );
}
