import { Field } from "#client/ui/Field.tsx";
import { NumberField } from "#client/ui/NumberField.tsx";
import { SettingField } from "#client/ui/SettingField.tsx";
import type { NumberSpec } from "#shared/units/readNumber.ts";
import type { Shown } from "./shown.ts";

const nothing = () => {};
const GAP: NumberSpec = { dimension: "length", unit: "mm", limits: { min: 0, max: 0.01 }, example: "0.6 mm" };
const MARGIN: NumberSpec = { dimension: null, limits: { min: 0.1, max: 10 }, example: "1.5" };

const numberField = (state: string, text: string, error: string | null, hint?: string): Shown => ({
  component: "NumberField",
  state,
  drawn: <NumberField label="Gap, mm" spec={GAP} text={text} error={error} hint={hint} onText={nothing} />,
});

/** Fields, empty, filled, refused and slid. */
export const FIELDS: readonly Shown[] = [
  {
    component: "Field",
    state: "text",
    drawn: (
      <Field label="Title" hint="as it stands in lists">
        {(input) => <input {...input} type="text" value="Pull on the side pane" />}
      </Field>
    ),
  },
  {
    component: "Field",
    state: "refused",
    drawn: (
      <Field label="Title" error="Give the test a title.">
        {(input) => <input {...input} type="text" value="" />}
      </Field>
    ),
  },
  {
    component: "Field",
    state: "a list",
    drawn: (
      <Field label="Rotor">
        {(input) => (
          <select {...input}>
            <option>Swept nine</option>
          </select>
        )}
      </Field>
    ),
  },
  numberField("empty", "", null),
  numberField("filled", "0.6", null, "calibrated 0.61 ± 0.05 mm from 7 pulls"),
  numberField("refused", "heavy", "“heavy” is no length: a number and mm, cm, in or thou."),
  {
    component: "SettingField",
    state: "with a slider",
    drawn: (
      <SettingField
        label="Gap"
        spec={GAP}
        value={6e-4}
        slider={{ min: 0, max: 3, step: 0.01 }}
        hint="set 0.60 mm"
        onValue={nothing}
      />
    ),
  },
  {
    component: "SettingField",
    state: "without one",
    drawn: <SettingField label="Margin wanted" spec={MARGIN} value={1.5} onValue={nothing} />,
  },
];
