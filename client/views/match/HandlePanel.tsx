import { useState } from "preact/hooks";
import type { Book, Resolved } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import { changes, leftOut, settle } from "../../state/build.ts";
import { HANDLES, type HandleKey, type Settings } from "../../state/handles.ts";
import { isChanged } from "../../state/outcome.ts";
import { Basis } from "./basis.tsx";
import { range } from "./entry.ts";
import { Handle } from "./Handle.tsx";
import { SaveBuild } from "./SaveBuild.tsx";

export interface HandlePanelProps {
  readonly book: Book;
  /** as stored */
  readonly build: Build;
  /** the build as tried, for what its values rest on */
  readonly resolved: Resolved | null;
  readonly settings: Settings;
  /** handles of which the stored build knows no value */
  readonly unset: readonly HandleKey[];
  /** what it comes to, in a few words: stands beside the setting on a phone */
  readonly effect: string | null;
}

/** What can be changed. On a phone one setting at a time stays within the thumb's reach. */
export function HandlePanel({ book, build, resolved, settings, unset, effect }: HandlePanelProps) {
  const isPropeller = book.rotors.find(({ id }) => id === build.rotor)?.data.kind === "propeller";
  const handles = isPropeller ? HANDLES.filter(({ key }) => key !== "gap") : HANDLES;
  const [picked, setPicked] = useState<HandleKey>(isPropeller ? "mass" : "gap");
  const [round, setRound] = useState(0);
  const [refused, setRefused] = useState<ReadonlySet<HandleKey>>(new Set());
  const tried = isChanged(changes.value);
  const refuse = (key: HandleKey, isRefused: boolean) =>
    setRefused((before) => {
      if (before.has(key) === isRefused) return before;
      return new Set(isRefused ? [...before, key] : [...before].filter((each) => each !== key));
    });
  const reset = () => {
    settle({});
    setRefused(new Set());
    setRound(round + 1);
  };
  return (
    <section class="page-side match-handles" aria-label="What if">
      <div class="handles-head">
        <h2>What if…</h2>
        <label class="handle-picker">
          <span class="visually-hidden">Which setting</span>
          <select value={picked} onChange={(event) => setPicked(event.currentTarget.value as HandleKey)}>
            {handles.map((handle) => (
              <option key={handle.key} value={handle.key}>
                {handle.label}
              </option>
            ))}
          </select>
        </label>
        {(tried || refused.size > 0) && (
          <button type="button" class="plain" onClick={reset}>
            Reset all
          </button>
        )}
      </div>
      {leftOut.value.map(({ handle, text }) => (
        <p key={handle.key} class="near small" role="status">
          {handle.label}: the address asks for {text === "" ? "nothing" : `“${text}”`} in SI units; allowed:{" "}
          {range(handle)}. It stays as the build has it.
        </p>
      ))}
      {isPropeller && (
        <p class="quiet small">No gap to set: a propeller presses by its thrust, with or without a skirt.</p>
      )}
      {handles.map((handle) => (
        <div key={handle.key} class={handle.key === picked ? "handle-slot picked-handle" : "handle-slot"}>
          <Handle
            handle={handle}
            was={settings[handle.key]}
            unset={unset.includes(handle.key)}
            round={round}
            onRefused={(isRefused) => refuse(handle.key, isRefused)}
            basis={<Basis book={book} build={build} resolved={resolved} handle={handle.key} />}
          />
        </div>
      ))}
      {effect && <output class="handle-effect">{effect}</output>}
      {tried && <SaveBuild build={build} />}
    </section>
  );
}
