import { useId, useMemo } from "preact/hooks";
import { currentBook } from "../../../state/book.ts";
import { anchorOf } from "../../../ui/anchor.ts";
import { FieldError, inputOf } from "../../../ui/Field.tsx";
import { NumberInput } from "../../../ui/NumberField.tsx";
import { type DraftHole, withNewHole, withoutHole, withPlate } from "../record/draft.ts";
import { knownPlates, plateOf } from "../record/knownPlates.ts";
import { HOLE_NUMBERS, type HoleNumber } from "../record/numbers.ts";
import { change, type FormModel, leaveHole, typeHole } from "./model.ts";

/** The bleed plate: its kinds of hole. With a pressure reading it is the flow meter. */
export function PlateEditor({ form }: { readonly form: FormModel }) {
  const { holes } = form.draft.value;
  const error = form.shown.value.get("plate");
  return (
    <fieldset class="bench-plate" id={anchorOf("plate")}>
      <legend>Bleed plate</legend>
      <KnownPlates form={form} />
      {holes.map((hole, i) => (
        <HoleLine key={hole.key} form={form} hole={hole} number={i + 1} />
      ))}
      {error && (
        <p class="field-error" role="alert">
          {error}
        </p>
      )}
      <button type="button" onClick={() => change(form, withNewHole(form.draft.value), "plate")}>
        {holes.length === 0 ? "Describe the holes" : "Add another kind of hole"}
      </button>
    </fieldset>
  );
}

/** The plates of earlier tests; one that is described anew is none of them. */
function KnownPlates({ form }: { readonly form: FormModel }) {
  const book = currentBook.value;
  const plates = useMemo(() => (book ? knownPlates(book) : []), [book]);
  if (plates.length === 0) return null;
  const { holes } = form.draft.value;
  return (
    <label class="bench-known-plates">
      <span class="field-label">A plate of an earlier test</span>
      <select
        value={plateOf(holes, plates)?.key ?? ""}
        onChange={(event) => {
          const plate = plates.find(({ key }) => key === event.currentTarget.value);
          if (plate) change(form, withPlate(form.draft.value, plate.holes), "plate");
        }}
      >
        <option value="">{holes.length === 0 ? "choose…" : "another one, as described"}</option>
        {plates.map(({ key, label }) => (
          <option key={key} value={key}>
            {label}
          </option>
        ))}
      </select>
    </label>
  );
}

const INPUTS: readonly { readonly name: HoleNumber; readonly label: string; readonly placeholder: string }[] =
  [
    { name: "count", label: "Count", placeholder: "8" },
    { name: "diameter", label: "Diameter", placeholder: "3 mm" },
    { name: "thickness", label: "Thickness", placeholder: "2 mm" },
    { name: "dischargeCoefficient", label: "Own C_d, if calibrated", placeholder: "computed" },
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
        <HoleInput key={input.name} form={form} hole={hole} number={number} {...input} />
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
