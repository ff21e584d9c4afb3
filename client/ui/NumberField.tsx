import { exampleOf, type NumberSpec } from "../../shared/units/readNumber.ts";
import { Field, type FieldInput, type FieldProps } from "./Field.tsx";

export interface NumberInputProps {
  readonly spec: NumberSpec;
  /** as typed; nothing of it is ever changed while one types */
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly onLeave?: () => void;
  /** in the empty field: an example of the number unless given */
  readonly placeholder?: string;
  /** id of a list of usual values */
  readonly list?: string;
  readonly class?: string;
  /** it follows from another field */
  readonly readOnly?: boolean;
  /** its name where no label stands beside it */
  readonly name?: string;
  readonly onKeyDown?: (event: KeyboardEvent) => void;
  /** it is a cell of a table, and the table's keys go from cell to cell */
  readonly cell?: boolean;
}

/** Where a unit is seldom typed, a phone shows digits. */
const keyboardOf = ({ dimension }: NumberSpec, digits: boolean) =>
  digits || dimension === null || dimension === "fraction" ? "decimal" : "text";

/** The input of a number with its unit, to stand in a field or in a table's cell. */
export function NumberInput({
  spec,
  text,
  input,
  digits = false,
  ...props
}: NumberInputProps & { readonly input: FieldInput; readonly digits?: boolean }) {
  return (
    <input
      {...input}
      type="text"
      inputMode={keyboardOf(spec, digits)}
      autoComplete="off"
      spellcheck={false}
      class={props.class}
      aria-label={props.name}
      list={props.list}
      readOnly={props.readOnly}
      placeholder={props.placeholder ?? exampleOf(spec)}
      value={text}
      onInput={(event) => props.onText(event.currentTarget.value)}
      onBlur={props.onLeave}
      onKeyDown={props.onKeyDown}
      data-cell={props.cell}
    />
  );
}

export type NumberFieldProps = Omit<FieldProps, "children"> &
  Omit<NumberInputProps, "class" | "name" | "cell">;

/** A labelled field for a number: the one field of all forms. Its text is its form's, read by readNumber. */
export function NumberField({ label, hint, error, class: extra, path, ...input }: NumberFieldProps) {
  return (
    <Field label={label} hint={hint} error={error} class={extra} path={path}>
      {(wired) => <NumberInput {...input} input={wired} />}
    </Field>
  );
}
