import { useComputed } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useId } from "preact/hooks";
import { decimalsShown, shownNumber, siOfShown, unitShown } from "../../../shared/units/shown.ts";
import { changes, settle, tryOut } from "../../state/build.ts";
import { type Changes, changed, type Handle as HandleKind } from "../../state/handles.ts";
import { FieldError, inputOf } from "../../ui/Field.tsx";
import { NumberInput } from "../../ui/NumberField.tsx";
import { useTyped } from "../../ui/useTyped.ts";
import { endWords, entryText, withUnit } from "./entry.ts";

/** Keeps a value that lies on the slider's grid there in spite of rounding. */
const GRID_SLACK = 1e-9;

export interface HandleProps {
  readonly handle: HandleKind;
  readonly was: number;
  /** nothing gives a value: `was` is only where the slider stands */
  readonly unset?: boolean;
  /** what the value is based on */
  readonly basis: ComponentChildren;
  /** counts how often everything was reset: what was typed and refused goes with it */
  readonly round: number;
  /** whether what stands in the field is refused */
  readonly onRefused: (refused: boolean) => void;
}

/** The slider's ends in the shown unit, widened where a typed value lies beyond them. */
function ends(handle: HandleKind, was: number, value: number): { low: number; high: number; step: number } {
  const step = 10 ** -decimalsShown(handle, handle.decimals);
  const [low, high] = handle.slide(was).map((si) => shownNumber(handle, si));
  const [least, most] = [handle.limits.min, handle.limits.max].map((si) => shownNumber(handle, si));
  const now = shownNumber(handle, value);
  return {
    low: Math.max(least, Math.floor(Math.min(low, now) / step + GRID_SLACK) * step),
    high: Math.min(most, Math.ceil(Math.max(high, now) / step - GRID_SLACK) * step),
    step,
  };
}

/** @returns what is tried with the slider at this shown number; back where the build stands it is no change */
function slid(handle: HandleKind, was: number, shown: number): Changes {
  const decimals = decimalsShown(handle, handle.decimals);
  const si = siOfShown(handle, Number(shown.toFixed(decimals)));
  const halfStep = Math.abs(siOfShown(handle, shown + 0.5 * 10 ** -decimals) - siOfShown(handle, shown));
  const { min: low, max: high } = handle.limits;
  const value = Math.abs(si - was) < halfStep ? was : Math.min(high, Math.max(low, si));
  return changed(changes.peek(), handle.key, value, was);
}

/** One what-if setting: slider and number together, what it was, what it is based on, a way back. */
export function Handle({ handle, was, unset = false, basis, round, onRefused }: HandleProps) {
  const id = useId();
  const tried = useComputed(() => changes.value[handle.key]).value;
  const value = tried ?? was;
  const isChanged = tried !== undefined;
  const { low, high, step } = ends(handle, was, value);
  const next = (si: number) => changed(changes.peek(), handle.key, si, was);
  const read = (event: { currentTarget: HTMLInputElement }) =>
    slid(handle, was, event.currentTarget.valueAsNumber);
  const before = unset ? "not known" : withUnit(handle, was);
  const atEnd = isChanged ? endWords(handle, was, value) : null;
  return (
    <div class="handle" data-handle={handle.key}>
      <label class="handle-label" for={id}>
        {handle.label}
      </label>
      <NumberEntry
        key={round}
        handle={handle}
        value={value}
        empty={unset && !isChanged}
        onValue={(si) => settle(next(si))}
        onRefused={onRefused}
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
            {atEnd && <span> · {atEnd}</span>}
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
  readonly onRefused: (refused: boolean) => void;
}

/** The setting's number: takes effect with each keystroke that can be read; else a message stands beside it. */
function NumberEntry({ handle, value, empty, id, onValue, onRefused }: NumberEntryProps) {
  const spec = { ...handle, example: withUnit(handle, value) };
  const typed = useTyped({ spec, value, shown: empty ? "" : entryText(handle, value), onValue });
  const isRefused = typed.problem !== null;
  useEffect(() => onRefused(isRefused), [isRefused]);
  return (
    <>
      <span class="handle-number">
        <NumberInput
          spec={spec}
          input={inputOf(id, typed.problem)}
          placeholder={empty ? "?" : ""}
          text={typed.text}
          onText={typed.onText}
          onLeave={typed.onLeave}
        />
        <span class="handle-unit">{unitShown(handle)}</span>
      </span>
      <FieldError id={id} error={typed.problem} class="handle-problem" />
    </>
  );
}
