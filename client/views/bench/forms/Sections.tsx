import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { typedText } from "../../../../shared/units/shown.ts";
import { currentBook } from "../../../state/book.ts";
import {
  AIR_FIELDS,
  HEAD_FIELDS,
  instrumentFields,
  isUnderNamed,
  NOTE_FIELD,
  namedPaths,
} from "../record/kinds.ts";
import { shownText } from "../record/names.ts";
import type { FieldSpec } from "../record/spec.ts";
import { AirHelp } from "./AirHelp.tsx";
import { BoundField } from "./BoundField.tsx";
import type { FormModel } from "./model.ts";

/** Some fields side by side. */
export function Fields({
  form,
  fields,
}: {
  readonly form: FormModel;
  readonly fields: readonly FieldSpec[];
}) {
  return (
    <div class="bench-fields">
      {fields.map((field) => (
        <BoundField key={field.key} form={form} field={field} />
      ))}
    </div>
  );
}

/** @returns the kind's own fields by their keys, in that order */
export function pick(form: FormModel, ...keys: readonly string[]): FieldSpec[] {
  return keys.flatMap((key) => form.spec.fields.filter((field) => field.key === key));
}

interface FoldProps {
  readonly form: FormModel;
  readonly title: string;
  /** what it says while folded */
  readonly says: string;
  readonly fields: readonly FieldSpec[];
  /** the fields in lines of their own; all in one unless given */
  readonly lines?: readonly (readonly FieldSpec[])[];
  /** open at first */
  readonly starts?: boolean;
  /** what stands under the fields */
  readonly children?: ComponentChildren;
}

/** Fields that seldom change, folded away; unfolded where one of them is wrong. */
export function Fold({ form, title, says, fields, lines = [fields], starts = false, children }: FoldProps) {
  const [open, setOpen] = useState(starts);
  const isWrong = fields.some(({ key }) => form.shown.value.has(key));
  return (
    <details
      class="bench-fold"
      open={open || isWrong}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <span class="bench-fold-title">{title}</span> {says}
      </summary>
      {lines.map((line) => (
        <Fields key={line[0].key} form={form} fields={line} />
      ))}
      {(open || isWrong) && children}
    </details>
  );
}

/** Of a test without readings of the air: 20 °C, 1013.25 hPa, half as moist as it could be. */
const usualAir = (): string =>
  `${typedText(293.15, "temperature", 3)} · ${typedText(101_325, "airPressure", 4)} · ${typedText(0.5, "fraction")} unless read`;

function airWords({ draft }: FormModel): string {
  const { fields } = draft.value;
  const given = AIR_FIELDS.map(({ key }) => fields[key]).filter(Boolean);
  return given.length > 0 ? given.join(" · ") : usualAir();
}

function instrumentWords({ draft, spec }: FormModel): string {
  const { fields } = draft.value;
  const named = shownText(spec, currentBook.value);
  const given = spec.instruments.flatMap(({ key, label }) => {
    const path = `instruments.${key}`;
    if (fields[path]) return [`${label.toLowerCase()} by ${named(path, fields[path])}`];
    const percent = fields[`instruments.${key}.percent`];
    const parts = [percent ? `${percent} %` : "", fields[`instruments.${key}.absolute`]].filter(Boolean);
    return parts.length > 0 ? [`${label.toLowerCase()} ±${parts.join(" and ")}`] : [];
  });
  return given.length > 0 ? given.join(" · ") : "not stated";
}

/** What every kind has: date and title, the air, the instruments, a note. */
export function CommonFields({ form }: { readonly form: FormModel }) {
  const chosen = namedPaths(form.spec, form.draft.value.fields);
  const instruments = instrumentFields(form.spec).filter(({ key }) => !isUnderNamed(key, chosen));
  const lines = form.spec.instruments.map(({ key }) =>
    instruments.filter((field) => `${field.key}.`.startsWith(`instruments.${key}.`)),
  );
  return (
    <>
      <Fields form={form} fields={HEAD_FIELDS} />
      <Fold form={form} title="Air" says={airWords(form)} fields={AIR_FIELDS}>
        <AirHelp form={form} />
      </Fold>
      {instruments.length > 0 && (
        <Fold
          form={form}
          title="Instruments"
          says={instrumentWords(form)}
          fields={instruments}
          lines={lines}
        />
      )}
      <BoundField form={form} field={NOTE_FIELD} />
    </>
  );
}
