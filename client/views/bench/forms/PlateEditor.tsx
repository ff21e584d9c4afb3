import { useId, useMemo } from "preact/hooks";
import { exampleOf } from "../../../../shared/units/readNumber.ts";
import { href } from "../../../app/router.ts";
import { currentBook } from "../../../state/book.ts";
import { anchorOf } from "../../../ui/anchor.ts";
import { FieldError, inputOf } from "../../../ui/Field.tsx";
import { NumberInput } from "../../../ui/NumberField.tsx";
import { type DraftHole, withField, withNewHole, withoutHole, withPlate } from "../record/draft.ts";
import { type KnownPlate, knownPlates, plateOf, platesOfBook } from "../record/knownPlates.ts";
import { HOLE_NUMBERS, type HoleNumber } from "../record/numbers.ts";
import { change, type FormModel, leaveHole, typeHole } from "./model.ts";

/** The bleed plate: its kinds of hole. With a pressure reading it is the flow meter. */
export function PlateEditor({ form }: { readonly form: FormModel }) {
  const { holes, fields } = form.draft.value;
  const error = form.shown.value.get("plate");
  const isNamed = Boolean(fields.plate);
  return (
    <fieldset class="bench-plate" id={anchorOf("plate")}>
      <legend>Bleed plate</legend>
      <KnownPlates form={form} />
      {!isNamed && holes.map((hole, i) => <HoleLine key={hole.key} form={form} hole={hole} number={i + 1} />)}
      {error && (
        <p class="field-error" role="alert">
          {error}
        </p>
      )}
      {isNamed ? (
        <a class="small" href={href("parts", `plates/${fields.plate}`)}>
          Its holes and its own discharge coefficient
        </a>
      ) : (
        <button type="button" onClick={() => change(form, withNewHole(form.draft.value), "plate")}>
          {holes.length === 0 ? "Describe the holes" : "Add another kind of hole"}
        </button>
      )}
    </fieldset>
  );
}

/** The plates of the book, and those that earlier tests describe; one that is described anew is none of them. */
function KnownPlates({ form }: { readonly form: FormModel }) {
  const book = currentBook.value;
  const [stored, described] = useMemo(
    () => (book ? [platesOfBook(book), knownPlates(book)] : [[], []]),
    [book],
  );
  if (stored.length + described.length === 0) return null;
  const { holes, fields } = form.draft.value;
  const choose = (key: string) => {
    const own = stored.find((plate) => plate.key === key);
    const plate = own ?? described.find((each) => each.key === key);
    if (plate) change(form, withPlate(form.draft.value, plate.holes, own?.key), "plate");
    else change(form, withField(form.draft.value, "plate", ""), "plate");
  };
  return (
    <label class="bench-known-plates">
      <span class="field-label">A plate of the book, or of an earlier test</span>
      <select
        value={fields.plate || (plateOf(holes, described)?.key ?? "")}
        onChange={(event) => choose(event.currentTarget.value)}
      >
        <option value="">{holes.length === 0 ? "choose…" : "another one, as described"}</option>
        <PlateOptions label="Of the book" plates={stored} />
        <PlateOptions label="Of earlier tests" plates={described} />
      </select>
    </label>
  );
}

function PlateOptions({ label, plates }: { readonly label: string; readonly plates: readonly KnownPlate[] }) {
  if (plates.length === 0) return null;
  return (
    <optgroup label={label}>
      {plates.map((plate) => (
        <option key={plate.key} value={plate.key}>
          {plate.label}
        </option>
      ))}
    </optgroup>
  );
}

const INPUTS: readonly { readonly name: HoleNumber; readonly label: string; readonly placeholder: string }[] =
  [
    { name: "count", label: "Count", placeholder: "8" },
    { name: "diameter", label: "Diameter", placeholder: "3 mm" },
    { name: "thickness", label: "Thickness", placeholder: "2 mm" },
    { name: "dischargeCoefficient", label: "Own discharge coefficient", placeholder: "computed" },
  ];

function HoleLine({
  form,
  hole,
  number,
}: {
  readonly form: FormModel;
  readonly hole: DraftHole;
  readonly number: number;
}) {
  return (
    <div class="bench-hole">
      {INPUTS.map((input) => (
        <HoleInput
          key={input.name}
          form={form}
          hole={hole}
          number={number}
          {...input}
          placeholder={exampleOf({ ...HOLE_NUMBERS[input.name], example: input.placeholder })}
        />
      ))}
      <label class="bench-hole-field" id={anchorOf(`plate.holes.${hole.key}.edge`)}>
        <span class="field-label">Edge</span>
        <select
          aria-label={`Hole ${number}, edge`}
          value={hole.edge}
          onChange={(event) => typeHole(form, hole.key, "edge", event.currentTarget.value)}
        >
          <option value="sharp">sharp</option>
          <option value="rounded">rounded</option>
        </select>
      </label>
      <button
        type="button"
        class="plain"
        aria-label={`Remove hole ${number} from the plate`}
        onClick={() => change(form, withoutHole(form.draft.value, hole.key))}
      >
        remove
      </button>
    </div>
  );
}

interface HoleInputProps {
  readonly form: FormModel;
  readonly hole: DraftHole;
  readonly number: number;
  readonly name: HoleNumber;
  readonly label: string;
  readonly placeholder: string;
}

function HoleInput({ form, hole, number, name, label, placeholder }: HoleInputProps) {
  const id = useId();
  const path = `plate.holes.${hole.key}.${name}`;
  const error = form.shown.value.get(path);
  return (
    <div class="bench-hole-field" id={anchorOf(path)}>
      <label class="field-label" for={id}>
        {label}
      </label>
      <NumberInput
        spec={HOLE_NUMBERS[name]}
        name={`Hole ${number}, ${label.toLowerCase()}`}
        input={inputOf(id, error)}
        placeholder={placeholder}
        text={hole[name]}
        onText={(text) => typeHole(form, hole.key, name, text)}
        onLeave={() => leaveHole(form, hole.key, name)}
      />
      <FieldError id={id} error={error} />
    </div>
  );
}
