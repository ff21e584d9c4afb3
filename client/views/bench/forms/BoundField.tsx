import type { ComponentChildren } from "preact";
import { dimension } from "../../../../shared/units/dimensions.ts";
import { currentBook } from "../../../state/book.ts";
import { AddPart } from "../../../ui/AddPart.tsx";
import { anchorOf } from "../../../ui/anchor.ts";
import { Field, type FieldInput } from "../../../ui/Field.tsx";
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
    field.type === "part" && currentBook.value && partsFor(currentBook.value, field).length === 0;
  return isBare ? <AddPart collection={field.collection} /> : field.hint;
}

function inputOf(form: FormModel, field: FieldSpec, text: string, input: FieldInput): ComponentChildren {
  const type = (value: string) => typeField(form, field.key, value);
  const done = () => leave(form, field.key);
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
    case "quantity":
      return <QuantityInput form={form} field={field} text={text} input={input} />;
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

function QuantityInput({
  form,
  field,
  text,
  input,
}: {
  readonly form: FormModel;
  readonly field: FieldSpec & { readonly type: "quantity" };
  readonly text: string;
  readonly input: FieldInput;
}) {
  const sizes = field.key === "diameter" ? sizesOf(currentBook.value, form.draft.value.fields.rotor) : [];
  const list = `${input.id}-sizes`;
  return (
    <>
      <input
        {...input}
        type="text"
        autoComplete="off"
        spellcheck={false}
        list={sizes.length > 0 ? list : undefined}
        placeholder={field.required ? `as ${dimension(field.dimension).example}` : "not read"}
        value={text}
        onInput={(event) => typeField(form, field.key, event.currentTarget.value)}
        onBlur={() => leaveField(form, field.key, field.dimension)}
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
  const parts = currentBook.value ? partsFor(currentBook.value, field) : [];
  const isGone = value !== "" && !parts.some((part) => part.id === value);
  return (
    <select
      {...input}
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
      onBlur={onLeave}
    >
      <option value="">{field.required ? "choose…" : "none"}</option>
      {isGone && <option value={value}>{value} (not in the book)</option>}
      {parts.map((part) => (
        <option key={part.id} value={part.id}>
          {part.data.name}
        </option>
      ))}
    </select>
  );
}
