import type { ComponentChildren } from "preact";
import { nameWithStanding } from "../../../../shared/model/withdrawn.ts";
import { exampleOf, type NumberSpec } from "../../../../shared/units/readNumber.ts";
import { currentBook } from "../../../state/book.ts";
import { AddPart } from "../../../ui/AddPart.tsx";
import { anchorOf } from "../../../ui/anchor.ts";
import { Field, type FieldInput } from "../../../ui/Field.tsx";
import { NumberInput } from "../../../ui/NumberField.tsx";
import { fieldNumber } from "../record/numbers.ts";
import type { FieldSpec } from "../record/spec.ts";
import { partsFor, sizesOf } from "./defaults.ts";
import { type FormModel, leave, leaveField, typeField } from "./model.ts";

interface BoundFieldProps {
  readonly form: FormModel;
  readonly field: FieldSpec;
}

/** One field above the rows, bound to what is typed, its message beside it. */
export function BoundField({ form, field }: BoundFieldProps) {
  const text = form.draft.value.fields[field.key] ?? "";
  return (
    <div id={anchorOf(field.key)} class={`bench-field bench-field-${field.type}`}>
      <Field label={field.label} hint={hintOf(field)} error={form.shown.value.get(field.key)}>
        {(input) => inputOf(form, field, text, input)}
      </Field>
    </div>
  );
}

/** A choice among parts of which the book has none says where to add one; what is typed so far is kept meanwhile. */
function hintOf(field: FieldSpec): ComponentChildren {
  const isBare =
    field.type === "part" &&
    !field.otherwise &&
    currentBook.value &&
    partsFor(currentBook.value, field).length === 0;
  return isBare ? <AddPart collection={field.collection} /> : field.hint;
}

function inputOf(form: FormModel, field: FieldSpec, text: string, input: FieldInput): ComponentChildren {
  const type = (value: string) => typeField(form, field.key, value);
  const done = () => leave(form, field.key);
  const number = fieldNumber(form.spec.kind, field);
  if (number) return <BoundNumber form={form} field={field} spec={number} text={text} input={input} />;
  switch (field.type) {
    case "part":
      return <PartSelect input={input} field={field} value={text} onChange={type} onLeave={done} />;
    case "choice":
      return (
        <select {...input} value={text} onChange={(event) => type(event.currentTarget.value)}>
          {text === "" && <option value="">choose…</option>}
          {field.options.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      );
    case "note":
      return (
        <textarea {...input} rows={2} value={text} onInput={(event) => type(event.currentTarget.value)} />
      );
    case "date":
      return (
        <input
          {...input}
          type="date"
          value={text}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={done}
        />
      );
    default:
      return (
        <input
          {...input}
          type="text"
          autoComplete="off"
          value={text}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={done}
        />
      );
  }
}

interface BoundNumberProps extends BoundFieldProps {
  readonly spec: NumberSpec;
  readonly text: string;
  readonly input: FieldInput;
}

/** A number above the rows; a diameter offers the sizes of its rotor. */
function BoundNumber({ form, field, spec, text, input }: BoundNumberProps) {
  const sizes = field.key === "diameter" ? sizesOf(currentBook.value, form.draft.value.fields.rotor) : [];
  const list = `${input.id}-sizes`;
  const isAsked = field.type === "quantity" && field.required;
  return (
    <>
      <NumberInput
        spec={spec}
        input={input}
        text={text}
        list={sizes.length > 0 ? list : undefined}
        placeholder={isAsked ? `as ${exampleOf(spec)}` : "not read"}
        onText={(typed) => typeField(form, field.key, typed)}
        onLeave={() => leaveField(form, field.key, spec)}
      />
      {sizes.length > 0 && (
        <datalist id={list}>
          {sizes.map((size) => (
            <option key={size} value={size} />
          ))}
        </datalist>
      )}
    </>
  );
}

function PartSelect({
  input,
  field,
  value,
  onChange,
  onLeave,
}: {
  readonly input: FieldInput;
  readonly field: FieldSpec & { readonly type: "part" };
  readonly value: string;
  readonly onChange: (id: string) => void;
  readonly onLeave: () => void;
}) {
  const parts = currentBook.value ? partsFor(currentBook.value, field, value) : [];
  const isGone = value !== "" && !parts.some((part) => part.id === value);
  return (
    <select
      {...input}
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
      onBlur={onLeave}
    >
      <option value="">{field.required ? "choose…" : (field.otherwise ?? "none")}</option>
      {isGone && <option value={value}>{value} (not in the book)</option>}
      {parts.map((part) => (
        <option key={part.id} value={part.id}>
          {nameWithStanding(part.data)}
        </option>
      ))}
    </select>
  );
}
