import { useId, useState } from "preact/hooks";
import { Status } from "../Status.tsx";
import { allOf, type Choices, type Conflict, firstChoices, type Side } from "./threeWay.ts";

export interface MergeProps {
  readonly conflicts: readonly Conflict[];
  /** the chosen side of every field */
  readonly onMerge: (choices: Choices) => void;
}

const CHANGED: Readonly<Record<Conflict["changedBy"], string>> = {
  mine: "changed by you",
  theirs: "changed elsewhere",
  both: "changed by both",
};

/** Two corrections of one record, field by field: which one each field takes is chosen here. */
export function Merge({ conflicts, onMerge }: MergeProps) {
  const [choices, setChoices] = useState(() => firstChoices(conflicts));
  const left = conflicts.filter(({ path }) => !choices.has(path)).length;
  if (conflicts.length === 0)
    return (
      <>
        <p>Both say the same.</p>
        <p class="bench-buttons">
          <button type="button" onClick={() => onMerge(choices)}>
            Go on
          </button>
        </p>
      </>
    );
  return (
    <>
      <p class="bench-buttons">
        <button type="button" class="plain" onClick={() => setChoices(allOf(conflicts, "mine"))}>
          Choose all of mine
        </button>
        <button type="button" class="plain" onClick={() => setChoices(allOf(conflicts, "theirs"))}>
          Choose all of the book's
        </button>
      </p>
      <table class="bench-differences merge">
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">You typed</th>
            <th scope="col">The book says</th>
          </tr>
        </thead>
        <tbody>
          {conflicts.map((conflict) => (
            <MergeRow
              key={conflict.path}
              conflict={conflict}
              chosen={choices.get(conflict.path) ?? null}
              onChoose={(side) => setChoices(new Map([...choices, [conflict.path, side]]))}
            />
          ))}
        </tbody>
      </table>
      <PutIn left={left} onPut={() => onMerge(choices)} />
    </>
  );
}

interface PutInProps {
  /** fields that both changed and that nothing is chosen for yet */
  readonly left: number;
  readonly onPut: () => void;
}

function PutIn({ left, onPut }: PutInProps) {
  return (
    <div class="bench-buttons">
      <button
        type="button"
        aria-disabled={left > 0}
        onClick={() => {
          if (left === 0) onPut();
        }}
      >
        Put the chosen ones into the form
      </button>
      {left > 0 && (
        <Status>
          {left === 1 ? "One field that both changed is" : `${left} fields that both changed are`} still to be
          chosen.
        </Status>
      )}
    </div>
  );
}

interface MergeRowProps {
  readonly conflict: Conflict;
  readonly chosen: Side | null;
  readonly onChoose: (side: Side) => void;
}

function MergeRow({ conflict, chosen, onChoose }: MergeRowProps) {
  const { label, before, after, changedBy } = conflict;
  const name = useId();
  const side = (which: Side, text: string) => (
    <td>
      <label>
        <input
          type="radio"
          name={name}
          checked={chosen === which}
          onChange={() => onChoose(which)}
          aria-label={`${label}, ${which === "mine" ? "you typed" : "the book says"}: ${text || "nothing"}`}
        />{" "}
        {text || <span class="quiet">nothing</span>}
      </label>
    </td>
  );
  return (
    <tr>
      <th scope="row">
        {label} <span class="quiet small">{CHANGED[changedBy]}</span>
      </th>
      {side("mine", before)}
      {side("theirs", after)}
    </tr>
  );
}
