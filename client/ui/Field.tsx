import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { anchorOf } from "./anchor.ts";
import { Subscripts } from "./Subscripts.tsx";

/** What a field's own input must carry, so that label, hint and error belong to it. */
export interface FieldInput {
  readonly id: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": "true" | undefined;
}

export interface FieldProps {
  readonly label: string;
  /** running hint under the field: the unit, the result while typing, the last value */
  readonly hint?: ComponentChildren;
  readonly error?: string | null;
  readonly class?: string;
  /** of the value in the record, where messages lead to the field */
  readonly path?: string;
  /** draws the input with what it is handed */
  readonly children: (input: FieldInput) => ComponentChildren;
}

/** @returns what an input carries, given what is said beside it */
export function inputOf(id: string, error: string | null | undefined, hint: unknown = null): FieldInput {
  const described = [hint ? `${id}-hint` : "", error ? `${id}-error` : ""].filter(Boolean).join(" ");
  return { id, "aria-describedby": described || undefined, "aria-invalid": error ? "true" : undefined };
}

/** What is wrong with a field, beside it. */
export function FieldError({
  id,
  error,
  class: extra,
}: {
  readonly id: string;
  readonly error: string | null | undefined;
  readonly class?: string;
}) {
  if (!error) return null;
  return (
    <span class={extra ? `field-error ${extra}` : "field-error"} id={`${id}-error`} role="alert">
      {error}
    </span>
  );
}

/** A labelled input, its hint, and its error beside it. */
export function Field({ label, hint, error, class: extra, path, children }: FieldProps) {
  const id = useId();
  return (
    <div class={extra ? `field ${extra}` : "field"} id={path && anchorOf(path)}>
      <label class="field-label" for={id}>
        <Subscripts text={label} />
      </label>
      {children(inputOf(id, error, hint))}
      <FieldError id={id} error={error} />
      {hint && (
        <span class="field-hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}

export interface TextFieldProps extends Omit<FieldProps, "children"> {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly placeholder?: string;
  readonly onLeave?: () => void;
}

/** A line of text. */
export function TextField({ value, onChange, placeholder, onLeave, ...field }: TextFieldProps) {
  return (
    <Field {...field}>
      {(input) => (
        <input
          {...input}
          type="text"
          value={value}
          placeholder={placeholder}
          autoComplete="off"
          onInput={(event) => onChange(event.currentTarget.value)}
          onBlur={onLeave}
        />
      )}
    </Field>
  );
}

/** Several lines of text. */
export function NoteField({ value, onChange, ...field }: Omit<TextFieldProps, "placeholder" | "onLeave">) {
  return (
    <Field {...field}>
      {(input) => (
        <textarea
          {...input}
          rows={3}
          value={value}
          onInput={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

export interface SelectFieldProps extends Omit<FieldProps, "children"> {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

/** One of several. */
export function SelectField({ value, onChange, options, ...field }: SelectFieldProps) {
  return (
    <Field {...field}>
      {(input) => (
        <select {...input} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
