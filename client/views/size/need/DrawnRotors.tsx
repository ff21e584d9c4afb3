import { useState } from "preact/hooks";
import type { DrawnRotor } from "../../../../shared/book/size/need/typedNeed.ts";
import { ROTOR } from "../../../../shared/model/limits.ts";
import type { NumberSpec } from "../../../../shared/units/readNumber.ts";
import { SettingField } from "../../../ui/SettingField.tsx";
import { MOST_DRAWN } from "./address.ts";

interface DrawnField {
  readonly key: keyof DrawnRotor;
  readonly label: string;
  readonly spec: NumberSpec;
  readonly hint?: string;
}

const { geometry } = ROTOR;
const FIELDS: readonly DrawnField[] = [
  { key: "blades", label: "Blades", spec: { dimension: null, limits: geometry.bladeCount, example: "7" } },
  {
    key: "exitAngle",
    label: "Blade exit angle, °",
    spec: { dimension: null, limits: geometry.bladeExitAngle, example: "40" },
    hint: "from the tangent; 90 is radial",
  },
  {
    key: "inletRatio",
    label: "Inlet over diameter",
    spec: { dimension: null, limits: geometry.inletRatio, example: "0.5" },
  },
  {
    key: "widthRatio",
    label: "Exit width over diameter",
    spec: { dimension: null, limits: geometry.widthRatio, example: "0.12" },
  },
];
const FIRST: DrawnRotor = { blades: 7, exitAngle: 40, inletRatio: 0.5, widthRatio: 0.12 };

interface Props {
  readonly drawn: readonly DrawnRotor[];
  readonly onDrawn: (drawn: readonly DrawnRotor[]) => void;
}

/** Centrifugal rotors of which only the drawing is known: their curves are estimated, and marked so. */
export function DrawnRotors({ drawn, onDrawn }: Props) {
  const [open, setOpen] = useState(drawn.length > 0);
  const put = (at: number, rotor: DrawnRotor) => onDrawn(drawn.map((each, i) => (i === at ? rotor : each)));
  return (
    <details class="size-drawn" open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>Rotors from a drawing</summary>
      <p class="quiet small">
        A centrifugal rotor that isn't printed yet: its curve is estimated, right to about 30&#8239;%, taken
        as printed of PLA.
      </p>
      {drawn.map((rotor, i) => (
        <fieldset key={i}>
          <legend>Drawing {i + 1}</legend>
          {FIELDS.map(({ key, label, spec, hint }) => (
            <SettingField
              key={key}
              label={label}
              spec={spec}
              hint={hint}
              value={rotor[key]}
              onValue={(value) => put(i, { ...rotor, [key]: value })}
            />
          ))}
          <button type="button" onClick={() => onDrawn(drawn.filter((_, at) => at !== i))}>
            Leave drawing {i + 1} out
          </button>
        </fieldset>
      ))}
      {drawn.length < MOST_DRAWN && (
        <button type="button" data-next onClick={() => onDrawn([...drawn, FIRST])}>
          Add a rotor from its drawing
        </button>
      )}
    </details>
  );
}
