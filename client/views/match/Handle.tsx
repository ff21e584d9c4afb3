import type { ComponentChildren } from "preact";
import { useEffect, useId, useState } from "preact/hooks";
import { changes, settle, tryOut } from "../../state/build.ts";
import { type Changes, changed, type Handle as HandleKind } from "../../state/handles.ts";
import { entryText, readEntry, shownNumber, siOf, unitOf, withUnit } from "./entry.ts";

/** Keeps a value that lies on the slider's grid there in spite of rounding. */
const GRID_SLACK = 1e-9;

export interface HandleProps {
  readonly handle: HandleKind;
  readonly was: number;
  /** nothing gives a value: `was` is only where the slider stands */
  readonly unset?: boolean;
  /** on what the value rests */
  readonly basis: ComponentChildren;
}

/** The slider's ends in the shown unit, widened where a typed value lies beyond them. */
function ends(handle: HandleKind, was: number, value: number): { low: number; high: number; step: number } {
  const step = 10 ** -handle.decimals;
  const [low, high] = handle.slide(was).map((si) => shownNumber(handle, si));
  const [least, most] = handle.limits.map((si) => shownNumber(handle, si));
  const now = shownNumber(handle, value);
  return {
    low: Math.max(least, Math.floor(Math.min(low, now) / step + GRID_SLACK) * step),
    high: Math.min(most, Math.ceil(Math.max(high, now) / step - GRID_SLACK) * step),
    step,
  };
}

/** @returns what is tried with the slider at this shown number; back where the build stands it is no change */
function slid(handle: HandleKind, was: number, shown: number): Changes {
  const si = siOf(handle, Number(shown.toFixed(handle.decimals)));
  const halfStep = Math.abs(siOf(handle, shown + 0.5 * 10 ** -handle.decimals) - siOf(handle, shown));
  const [low, high] = handle.limits;
  const value = Math.abs(si - was) < halfStep ? was : Math.min(high, Math.max(low, si));
  return changed(changes.peek(), handle.key, value, was);
}

/** One what-if handle: slider and number together, what it was, what it rests on, a way back. */
export function Handle({ handle, was, unset = false, basis }: HandleProps) {
  const id = useId();
  const value = changes.value[handle.key] ?? was;
  const isChanged = changes.value[handle.key] !== undefined;
  const { low, high, step } = ends(handle, was, value);
  const next = (si: number) => changed(changes.peek(), handle.key, si, was);
  const read = (event: { currentTarget: HTMLInputElement }) =>
    slid(handle, was, event.currentTarget.valueAsNumber);
  const before = unset ? "not known" : withUnit(handle, was);
  return (
    <div class="handle" data-handle={handle.key}>
      <label class="handle-label" for={id}>
        {handle.label}
      </label>
      <NumberEntry
        handle={handle}
        value={value}
        empty={unset && !isChanged}
        onValue={(si) => settle(next(si))}
        id={id}
      />
      <input
        type="range"
        aria-label={`${handle.label}, slider`}
        aria-valuetext={unset && !isChanged ? "not known" : withUnit(handle, value)}
        min={low}
        max={high}
        step={step}
        value={shownNumber(handle, value)}
        onInput={(event) => tryOut(read(event))}
        onChange={(event) => settle(read(event))}
      />
      <span class="handle-basis">
        {isChanged ? (
          <>
            was {before}{" "}
            <button type="button" class="plain" onClick={() => settle(next(was))}>
              back
              <span class="visually-hidden">
                {" "}
                to {before}, {handle.label}
              </span>
            </button>
          </>
        ) : (
          basis
        )}
      </span>
    </div>
  );
}

interface NumberEntryProps {
  readonly handle: HandleKind;
  readonly value: number;
  /** no value is known: nothing stands in the field */
  readonly empty: boolean;
  readonly id: string;
  readonly onValue: (si: number) => void;
}

/** The handle's number: takes effect with each keystroke that can be read; else a message stands beside it. */
function NumberEntry({ handle, value, empty, id, onValue }: NumberEntryProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setProblem(null);
    setDraft((typed) => (typed !== null && sameValue(handle, typed, value) ? typed : null));
  }, [value]);
  const type = (text: string) => {
    const entry = readEntry(handle, text, value);
    setDraft(text);
    setProblem("problem" in entry ? entry.problem : null);
    if ("value" in entry) onValue(entry.value);
  };
  const unit = unitOf(handle);
  return (
    <>
      <span class="handle-number">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={draft ?? (empty ? "" : entryText(handle, value))}
          placeholder={empty ? "?" : undefined}
          aria-invalid={problem ? "true" : undefined}
          aria-describedby={problem ? `${id}-problem` : undefined}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={() => !problem && setDraft(null)}
        />
        <span class="handle-unit">{unit}</span>
      </span>
      {problem && (
        <span class="field-error handle-problem" id={`${id}-problem`} role="alert">
          {problem}
        </span>
      )}
    </>
  );
}

function sameValue(handle: HandleKind, typed: string, value: number): boolean {
  const entry = readEntry(handle, typed, value);
  return "value" in entry && Math.abs(entry.value - value) <= 1e-9 * Math.max(1e-3, Math.abs(value));
}
