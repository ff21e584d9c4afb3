import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { type DimensionName, dimension } from "../../shared/units/dimensions.ts";
import { parseQuantity, type TypedQuantity, UnitError } from "../../shared/units/parse.ts";
import { Field } from "./Field.tsx";

export interface QuantityFieldProps {
  readonly label: string;
  readonly dimension: DimensionName;
  readonly value: TypedQuantity | null;
  /** the quantity as typed; null when the field is empty or cannot be read */
  readonly onChange: (value: TypedQuantity | null) => void;
  /** the parser's message, null when what is typed can be read; a form asks this before it sends */
  readonly onProblem?: (message: string | null) => void;
  /** the server's word on this field */
  readonly error?: string | null;
  /** the unit meant when none is typed */
  readonly defaultUnit?: string;
  readonly hint?: ComponentChildren;
  /** an example in the empty field, the quantity's own unless given */
  readonly placeholder?: string;
  readonly class?: string;
  /** of the value in the record, where messages lead to the field */
  readonly path?: string;
}

const textOf = (value: TypedQuantity | null) => (value ? `${value.value} ${value.unit}`.trim() : "");
const same = (a: TypedQuantity | null, b: TypedQuantity | null) =>
  a?.value === b?.value && a?.unit === b?.unit;

function read(text: string, name: DimensionName, unit: string): TypedQuantity | string | null {
  if (text.trim() === "") return null;
  try {
    return parseQuantity(text, name, unit);
  } catch (error) {
    if (error instanceof UnitError) return error.message;
    throw error;
  }
}

/** A quantity with its unit, "12 mmH2O": the text stays as typed, the message stands beside the field. */
export function QuantityField(props: QuantityFieldProps) {
  const { value, onChange, onProblem, error } = props;
  const unit = props.defaultUnit ?? dimension(props.dimension).shown[0].label;
  const [text, setText] = useState(textOf(value));
  const [message, setMessage] = useState<string | null>(null);
  const told = useRef<TypedQuantity | null>(value);

  useEffect(() => {
    if (same(value, told.current)) return;
    told.current = value;
    setText(textOf(value));
    setMessage(null);
  }, [value]);

  const type = (typed: string) => {
    setText(typed);
    const result = read(typed, props.dimension, unit);
    const problem = typeof result === "string" ? result : null;
    const quantity = typeof result === "string" ? null : result;
    setMessage(problem);
    onProblem?.(problem);
    if (same(quantity, told.current)) return;
    told.current = quantity;
    onChange(quantity);
  };

  return (
    <Field
      label={props.label}
      error={message ?? error}
      hint={props.hint}
      class={props.class}
      path={props.path}
    >
      {(input) => (
        <input
          {...input}
          type="text"
          inputMode={props.dimension === "fraction" ? "decimal" : "text"}
          autoComplete="off"
          spellcheck={false}
          placeholder={props.placeholder ?? dimension(props.dimension).example}
          value={text}
          onInput={(event) => type(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}
