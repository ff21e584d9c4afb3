import { useState } from "preact/hooks";
import { TextField } from "../../ui/Field.tsx";
import { type RunHandle, readHandle } from "./handles.ts";

export interface RunSliderProps {
  readonly handle: RunHandle;
  /** in the handle's unit */
  readonly value: number;
  readonly hint: string;
  readonly onValue: (value: number) => void;
}

/** Digits that a value may show behind the point. */
const DECIMALS = 2;

/** A number and a slider for it; what can't be is said beside it and changes nothing. */
export function RunSlider({ handle, value, hint, onValue }: RunSliderProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const read = draft === null ? null : readHandle(handle, draft);
  const shown = String(Number(value.toFixed(DECIMALS)));
  const type = (text: string) => {
    setDraft(text);
    const typed = readHandle(handle, text);
    if ("value" in typed) onValue(typed.value);
  };
  return (
    <div class="run-slider">
      <TextField
        label={handle.label}
        value={draft ?? shown}
        hint={hint}
        error={read && "problem" in read ? read.problem : null}
        onChange={type}
      />
      <input
        type="range"
        aria-label={`${handle.label}, slider`}
        aria-valuetext={`${shown} ${handle.unit}`}
        min={handle.limits[0]}
        max={handle.unit === "×" ? Math.max(SLIDER_MARGIN, value) : handle.limits[1]}
        step={handle.step}
        value={value}
        onInput={(event) => {
          setDraft(null);
          onValue(event.currentTarget.valueAsNumber);
        }}
      />
    </div>
  );
}

/** The slider's end for a margin; more can be typed. */
const SLIDER_MARGIN = 4;
