import { useState } from "preact/hooks";
import type { Weather } from "../../../../shared/physics/air.ts";
import { CELSIUS_ZERO } from "../../../../shared/physics/constants.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { type TypedQuantity, toSI } from "../../../../shared/units/quantity.ts";
import { Field, SelectField } from "../../../ui/Field.tsx";
import { QuantityField } from "../../../ui/QuantityField.tsx";
import type { RotorFamily } from "./family.ts";
import { SHOWN_AS, type ShownAs, type ShownState, sizesOf, speedRange } from "./shownState.ts";

const WORDS: Readonly<Record<ShownAs, string>> = {
  pressure: "pressure and flow",
  psi: "ψ against φ",
  lambda: "λ against φ",
  efficiency: "η against φ",
};

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
  const setSpeed = (text: string, settled: boolean) => {
    const rpm = Number(text);
    if (rpm > 0 && Number.isFinite(rpm)) change({ rpm }, settled);
  };
  const step = 10 ** Math.max(0, Math.floor(Math.log10(most)) - 2);
  return (
    <div class="curves-state">
      <Field label="Speed, rpm" class="curves-speed">
        {(input) => (
          <span class="curves-speed-inputs">
            <input
              type="range"
              aria-label="Speed"
              min={least}
              max={most}
              step={step}
              value={state.rpm}
              onInput={(event) => setSpeed(event.currentTarget.value, false)}
              onChange={(event) => setSpeed(event.currentTarget.value, true)}
            />
            <input
              {...input}
              type="number"
              min={1}
              step="any"
              value={state.rpm}
              onInput={(event) => setSpeed(event.currentTarget.value, false)}
              onChange={(event) => setSpeed(event.currentTarget.value, true)}
            />
          </span>
        )}
      </Field>
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

interface AirFieldsProps {
  readonly weather: Weather;
  readonly onChange: (weather: Weather) => void;
}

/** What the API allows, in SI. */
const TEMPERATURES = { min: 253.15, max: 333.15 };
const PRESSURES = { min: 30e3, max: 120e3 };

function AirFields({ weather, onChange }: AirFieldsProps) {
  const [temperature, setTemperature] = useState<TypedQuantity | null>({
    value: weather.temperature - CELSIUS_ZERO,
    unit: "°C",
  });
  const [pressure, setPressure] = useState<TypedQuantity | null>({
    value: weather.pressure / 100,
    unit: "hPa",
  });
  const [problem, setProblem] = useState<{ temperature?: string; pressure?: string }>({});
  const take = (key: "temperature" | "pressure", typed: TypedQuantity | null) => {
    (key === "temperature" ? setTemperature : setPressure)(typed);
    if (!typed) return;
    const value = toSI(typed, key);
    const { min, max } = key === "temperature" ? TEMPERATURES : PRESSURES;
    const inside = value >= min && value <= max;
    const allowed = `Allowed: ${formatQuantity(min, key)} to ${formatQuantity(max, key, { digits: 4 })}.`;
    setProblem({ ...problem, [key]: inside ? undefined : allowed });
    if (inside) onChange({ ...weather, [key]: value });
  };
  return (
    <details class="curves-air">
      <summary>
        Air {formatFixed(weather.temperature - CELSIUS_ZERO, 0)} °C, {formatFixed(weather.pressure / 100, 0)}{" "}
        hPa
      </summary>
      <QuantityField
        label="Temperature"
        dimension="temperature"
        value={temperature}
        error={problem.temperature}
        onChange={(typed) => take("temperature", typed)}
      />
      <QuantityField
        label="Air pressure"
        dimension="pressure"
        defaultUnit="hPa"
        value={pressure}
        error={problem.pressure}
        onChange={(typed) => take("pressure", typed)}
      />
    </details>
  );
}
