import type { ComponentChildren } from "preact";
import { asRead } from "../../shared/units/decimalMark.ts";
import type { NumberSpec } from "../../shared/units/readNumber.ts";
import { labelWithUnit, numberText, shownNumber, siOfShown, unitShown } from "../../shared/units/shown.ts";
import { NumberField } from "./NumberField.tsx";
import { useTyped } from "./useTyped.ts";

export interface SettingFieldProps {
  /** without its unit */
  readonly label: string;
  readonly spec: NumberSpec;
  /** SI */
  readonly value: number;
  /** how the number stands in the field; as it would be typed unless given */
  readonly shown?: string;
  /** ends and step of its slider, in the unit shown; none unless given */
  readonly slider?: { readonly min: number; readonly max: number; readonly step: number };
  readonly hint?: ComponentChildren;
  /** SI; not settled while the slider is dragged */
  readonly onValue: (si: number, settled: boolean) => void;
}

/** A number that takes effect while it is typed or slid; what can't be is said beside it and changes nothing. */
export function SettingField({ label, spec, value, slider, hint, onValue, ...props }: SettingFieldProps) {
  const shown = props.shown ?? numberText(spec, value);
  const typed = useTyped({ spec, value, shown, onValue: (si) => onValue(si, true) });
  const unit = unitShown(spec);
  const slid = (event: { currentTarget: HTMLInputElement }, settled: boolean) => {
    typed.drop();
    onValue(siOfShown(spec, event.currentTarget.valueAsNumber), settled);
  };
  return (
    <div class="setting-field">
      <NumberField
        label={labelWithUnit(label, spec)}
        hint={hint}
        error={typed.problem}
        spec={spec}
        text={typed.text}
        onText={typed.onText}
        onLeave={typed.onLeave}
      />
      {slider && (
        <input
          type="range"
          aria-label={`${label}, slider`}
          aria-valuetext={`${asRead(shown)}${unit === "°" ? "" : " "}${unit}`}
          {...slider}
          value={shownNumber(spec, value)}
          onInput={(event) => slid(event, false)}
          onChange={(event) => slid(event, true)}
        />
      )}
    </div>
  );
}
