import type { Stored } from "../../../shared/model/record.ts";
import { nameWithStanding, offered } from "../../../shared/model/withdrawn.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { RECTANGLE_EXAMPLE } from "../../../shared/units/rectangle.ts";
import { typedText, unitShown } from "../../../shared/units/shown.ts";
import { currentBook } from "../../state/book.ts";
import { AddPart } from "../../ui/AddPart.tsx";
import { NoteField, SelectField, TextField } from "../../ui/Field.tsx";
import { NumberField } from "../../ui/NumberField.tsx";
import { markable, marksIn, toggledMark } from "./draft.ts";
import type { Editing } from "./editing.ts";
import { outlineIn } from "./follow.ts";
import { type NumericSpec, numberAt, uncertaintyPath } from "./numbers.ts";
import type {
  BareSpec,
  FieldSpec,
  ListSpec,
  MarksSpec,
  QuantitySpec,
  RectangleSpec,
  ReferenceSpec,
  SingleSpec,
} from "./spec.ts";

interface Props<S extends FieldSpec> {
  readonly spec: S;
  /** where the value lies, rows included */
  readonly path: string;
  readonly editing: Editing;
}

function labelOf(spec: SingleSpec): string {
  return spec.required ? spec.label : `${spec.label}, optional`;
}

type Listed = Stored<{ readonly name: string; readonly retired?: string }>;

function ReferenceField({ spec, path, editing }: Props<ReferenceSpec>) {
  const all: readonly Listed[] = currentBook.value?.[spec.collection] ?? [];
  const records = offered(all, editing.textAt(path));
  const unchosen = spec.required ? "choose" : "none";
  const options = [
    { value: "", label: records.length === 0 ? "none in the book yet" : unchosen },
    ...records.map((record) => ({ value: record.id, label: nameWithStanding(record.data) })),
  ];
  return (
    <SelectField
      label={labelOf(spec)}
      hint={records.length === 0 ? <AddPart collection={spec.collection} /> : spec.hint}
      value={editing.textAt(path)}
      options={options}
      path={path}
      error={editing.errorAt(path)}
      onChange={(value) => editing.set(path, value)}
    />
  );
}

function hintOf(spec: NumericSpec): string | undefined {
  if (spec.kind !== "quantity" || spec.unless === undefined) return spec.hint;
  return `${typedText(spec.unless, spec.dimension, 6)} unless given`;
}

function NumericField({ spec, path, editing, label }: Props<NumericSpec> & { label: string }) {
  const number = numberAt(editing.form, spec, path, editing.textAt);
  const unit = number.dimension && unitShown(number);
  return (
    <NumberField
      label={unit ? `${label} (${unit})` : label}
      hint={editing.isFollowing(path) ? "follows from the rectangle" : hintOf(spec)}
      readOnly={editing.isFollowing(path)}
      spec={number}
      placeholder={spec.kind === "quantity" && spec.example !== "" ? undefined : ""}
      text={editing.textAt(path)}
      path={path}
      error={editing.errorAt(path)}
      onText={(text) => editing.set(path, text)}
      onLeave={() => editing.leave(path, spec)}
    />
  );
}

function WithUncertainty({ spec, path, editing }: Props<QuantitySpec | BareSpec>) {
  const field = <NumericField spec={spec} path={path} editing={editing} label={labelOf(spec)} />;
  if (!spec.doubt) return field;
  return (
    <div class="field-pair">
      {field}
      <NumericField
        spec={{ ...spec, hint: "standard uncertainty", example: "" }}
        path={uncertaintyPath(spec.doubt)}
        editing={editing}
        label="±"
      />
    </div>
  );
}

function ListField({ spec, path, editing }: Props<ListSpec>) {
  const count = editing.rowsOf(path);
  const error = editing.errorAt(path);
  return (
    <fieldset class="list-field">
      <legend class="field-label">{spec.required ? spec.label : `${spec.label}, optional`}</legend>
      {Array.from({ length: count }, (_, i) => (
        <div class="list-row" key={i}>
          {spec.columns.map((column) => (
            <FieldOf key={column.path} spec={column} path={`${path}.${i}.${column.path}`} editing={editing} />
          ))}
          {count > (spec.required ? 1 : 0) && (
            <button type="button" class="plain" onClick={() => editing.dropRow(spec, i)}>
              Take out<span class="visually-hidden"> row {i + 1}</span>
            </button>
          )}
        </div>
      ))}
      {error && (
        <span class="field-error" role="alert">
          {error}
        </span>
      )}
      <button type="button" onClick={() => editing.addRow(spec)}>
        {spec.add}
      </button>
    </fieldset>
  );
}

/** Two sides and a radius as one types them, and what follows. */
function RectangleField({ spec, path, editing }: Props<RectangleSpec>) {
  const text = editing.textAt(path);
  const outline = outlineIn(text);
  const side = outline && formatQuantity(outline.longestSide, "length");
  return (
    <TextField
      label={labelOf(spec)}
      hint={side ? `longest straight side ${side}` : spec.hint}
      placeholder={RECTANGLE_EXAMPLE}
      value={text}
      path={path}
      error={editing.errorAt(path)}
      onChange={(value) => editing.set(path, value)}
      onLeave={() => editing.leave(path, spec)}
    />
  );
}

/** Boxes for the numbers that are guesses or makers' figures. */
function MarksField({ spec, path, editing }: Props<MarksSpec>) {
  const marks = marksIn(editing.textAt(path));
  return (
    <fieldset class="list-field">
      <legend class="field-label">{spec.label}</legend>
      {markable(editing.form).map((field) => (
        <label key={field.path} class="mark-box">
          <input
            type="checkbox"
            checked={marks.includes(field.path)}
            onChange={() => editing.set(path, toggledMark(editing.textAt(path), field.path))}
          />{" "}
          {field.label}
        </label>
      ))}
    </fieldset>
  );
}

/** One field of a form by its kind. */
export function FieldOf({ spec, path, editing }: Props<FieldSpec>) {
  switch (spec.kind) {
    case "list":
      return <ListField spec={spec} path={path} editing={editing} />;
    case "marks":
      return <MarksField spec={spec} path={path} editing={editing} />;
    case "reference":
      return <ReferenceField spec={spec} path={path} editing={editing} />;
    case "quantity":
    case "number":
      return <WithUncertainty spec={spec} path={path} editing={editing} />;
    case "measured":
      return <NumericField spec={spec} path={path} editing={editing} label={labelOf(spec)} />;
    case "rectangle":
      return <RectangleField spec={spec} path={path} editing={editing} />;
    case "choice":
      return (
        <SelectField
          label={spec.label}
          value={editing.textAt(path)}
          options={spec.options.map(([value, label]) => ({ value, label }))}
          path={path}
          error={editing.errorAt(path)}
          onChange={(value) => editing.set(path, value)}
        />
      );
    case "note":
      return (
        <NoteField
          label={labelOf(spec)}
          value={editing.textAt(path)}
          path={path}
          error={editing.errorAt(path)}
          onChange={(value) => editing.set(path, value)}
        />
      );
    default:
      return (
        <TextField
          label={labelOf(spec)}
          value={editing.textAt(path)}
          path={path}
          error={editing.errorAt(path)}
          onChange={(value) => editing.set(path, value)}
        />
      );
  }
}
