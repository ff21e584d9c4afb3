import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef, useState } from "preact/hooks";
import { changes, settle, tryOut } from "../../state/build.ts";
import { type Changes, changed, type Handle as HandleKind } from "../../state/handles.ts";
import { endWords, entryText, readEntry, shownNumber, siOf, unitOf, withUnit } from "./entry.ts";

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

/** One what-if setting: slider and number together, what it was, what it is based on, a way back. */
export function Handle({ handle, was, unset = false, basis, round, onRefused }: HandleProps) {
  const id = useId();
  const value = changes.value[handle.key] ?? was;
  const isChanged = changes.value[handle.key] !== undefined;
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

/** As far apart as two ways of typing one value may come to lie, relative. */
const SAME = 1e-9;

/** The setting's number: takes effect with each keystroke that can be read; else a message stands beside it. */
function NumberEntry({ handle, value, empty, id, onValue, onRefused }: NumberEntryProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const latest = useRef<string | null>(null);
  const typed = useRef<number | null>(null);
  /** the unit tables are still on their way */
  const unread = useRef(false);
  const say = (message: string | null) => {
    setProblem(message);
    onRefused(message !== null);
  };
  const input = useRef<HTMLInputElement>(null);
  const drop = () => {
    latest.current = null;
    setDraft(null);
  };
  useEffect(() => {
    const own = typed.current !== null && Math.abs(typed.current - value) <= SAME * Math.max(1e-3, value);
    if (!own) drop();
    say(null);
  }, [value]);
  const type = async (text: string) => {
    latest.current = text;
    setDraft(text);
    unread.current = true;
    const { parseQuantity } = await import("../../../shared/units/parse.ts");
    if (latest.current !== text) return;
    unread.current = false;
    const entry = readEntry(handle, text, value, parseQuantity);
    typed.current = "value" in entry ? entry.value : null;
    say("problem" in entry ? entry.problem : null);
    if ("value" in entry) onValue(entry.value);
    if ("value" in entry && document.activeElement !== input.current) drop();
  };
  const unit = unitOf(handle);
  return (
    <>
      <span class="handle-number">
        <input
          id={id}
          ref={input}
          type="text"
          inputMode={handle.dimension ? "text" : "decimal"}
          autoComplete="off"
          value={draft ?? (empty ? "" : entryText(handle, value))}
          placeholder={empty ? "?" : undefined}
          aria-invalid={problem ? "true" : undefined}
          aria-describedby={problem ? `${id}-problem` : undefined}
          onInput={(event) => void type(event.currentTarget.value)}
          onBlur={() => !problem && !unread.current && drop()}
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
