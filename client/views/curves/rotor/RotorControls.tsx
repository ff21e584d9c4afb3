import { BUILD, TESTS } from "../../../../shared/model/limits.ts";
import type { Weather } from "../../../../shared/physics/air.ts";
import { formatQuantity, fromUnit, inUnit } from "../../../../shared/units/format.ts";
import type { NumberSpec } from "../../../../shared/units/readNumber.ts";
import { SelectField } from "../../../ui/Field.tsx";
import { SettingField } from "../../../ui/SettingField.tsx";
import type { RotorFamily } from "./family.ts";
import { SHOWN_AS, type ShownAs, type ShownState, sizesOf, speedRange } from "./shownState.ts";

const WORDS: Readonly<Record<ShownAs, string>> = {
  pressure: "pressure and flow",
  psi: "ψ against φ",
  lambda: "λ against φ",
  efficiency: "η against φ",
};

/** Speeds that are looked at: what a test's row takes. */
const SPEED = { dimension: "speed", limits: TESTS.curve.rows.speed } as const satisfies NumberSpec;
/** Digits of a speed in the address. */
const DIGITS = 9;

export interface RotorControlsProps {
  readonly family: RotorFamily;
  readonly state: ShownState;
  readonly change: (part: Partial<ShownState>, settled: boolean) => void;
}

/** How the curve is looked at: in coefficients, or at any speed, size and air. */
export function RotorControls({ family, state, change }: RotorControlsProps) {
  const power = family.answer.basis !== "missing" && family.answer.lambda !== null;
  return (
    <div class="curves-controls">
      <fieldset class="curves-switch">
        <legend>Show</legend>
        {SHOWN_AS.filter((as) => power || as === "pressure" || as === "psi").map((as) => (
          <label key={as}>
            <input
              type="radio"
              name="curves-show"
              checked={state.as === as}
              onChange={() => change({ as }, true)}
            />
            {WORDS[as]}
          </label>
        ))}
      </fieldset>
      {state.as === "pressure" && <State family={family} state={state} change={change} />}
    </div>
  );
}

function State({ family, state, change }: RotorControlsProps) {
  const [least, most] = speedRange(family);
  const sizes = sizesOf(family);
  const all = sizes.includes(state.diameter) ? sizes : [...sizes, state.diameter].sort((a, b) => a - b);
  const step = 10 ** Math.max(0, Math.floor(Math.log10(most)) - 2);
  return (
    <div class="curves-state">
      <div class="curves-speed">
        <SettingField
          label="Speed"
          spec={SPEED}
          value={fromUnit(state.rpm, "speed")}
          slider={{ min: least, max: most, step }}
          onValue={(speed, settled) =>
            change({ rpm: Number(inUnit(speed, "speed").toPrecision(DIGITS)) }, settled)
          }
        />
      </div>
      <SelectField
        label="Diameter"
        value={String(state.diameter)}
        onChange={(text) => change({ diameter: Number(text) }, true)}
        options={all.map((diameter) => ({
          value: String(diameter),
          label: formatQuantity(diameter, "length", { digits: 3 }),
        }))}
      />
      <AirFields weather={state.weather} onChange={(weather) => change({ weather }, false)} />
    </div>
  );
}

const TEMPERATURE = { dimension: "temperature", limits: BUILD.air.temperature } as const;
const PRESSURE = {
  dimension: "airPressure",
  limits: BUILD.air.pressure,
  example: "990 hPa",
} as const;

interface AirFieldsProps {
  readonly weather: Weather;
  readonly onChange: (weather: Weather) => void;
}

function AirFields({ weather, onChange }: AirFieldsProps) {
  const field = (key: "temperature" | "pressure", spec: NumberSpec) => ({
    spec,
    value: weather[key],
    onValue: (value: number) => onChange({ ...weather, [key]: value }),
  });
  return (
    <details class="curves-air">
      <summary>
        Air {formatQuantity(weather.temperature, "temperature", { decimals: 0 })},{" "}
        {formatQuantity(weather.pressure, "airPressure", { decimals: 0 })}
      </summary>
      <SettingField label="Temperature" {...field("temperature", TEMPERATURE)} />
      <SettingField label="Air pressure" {...field("pressure", PRESSURE)} />
    </details>
  );
}
