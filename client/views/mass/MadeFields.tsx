import { DENSITIES, STUFF_KEYS } from "../../../shared/model/densities.ts";
import { labelWithUnit, typedText } from "../../../shared/units/shown.ts";
import { SelectField } from "../../ui/Field.tsx";
import { NumberField } from "../../ui/NumberField.tsx";
import type { LineProblems } from "./line.ts";
import { MADE_SPECS, type MadeDraft, type MadeField, stuffOf } from "./madeDraft.ts";

const WAYS = [
  { value: "", label: "typed here" },
  { value: "volume", label: "from a print's volume" },
  { value: "sheet", label: "from a sheet's area" },
];
const stuffs = () =>
  STUFF_KEYS.map((key) => ({
    value: key,
    label: `${DENSITIES[key].name}, ${typedText(DENSITIES[key].density, "density", 4)}`,
  }));

const OF_VOLUME: readonly (readonly [MadeField, string, string?])[] = [
  ["volume", "Volume", "of its outer shape, as the slicer or the drawing gives it"],
  ["infill", "Infill", "100 unless given"],
  ["surface", "Surface", "with walls: their share is solid"],
  ["wall", "Walls"],
];
const OF_SHEET: readonly (readonly [MadeField, string, string?])[] = [
  ["area", "Area"],
  ["thickness", "Thickness"],
];
const OF_PLACE: readonly (readonly [MadeField, string, string?])[] = [
  ["fromRear", "Ahead of the rear axle", "where it stands, for the centre of gravity"],
  ["height", "Over the surface"],
];

export interface MadeFieldsProps {
  readonly draft: MadeDraft;
  readonly problems: LineProblems;
  readonly onDraft: (change: Partial<MadeDraft>) => void;
}

/** Where a line's mass comes from, and where it stands. */
export function MadeFields({ draft, problems, onDraft }: MadeFieldsProps) {
  const fields = (list: typeof OF_VOLUME) =>
    list.map(([field, label, hint]) => (
      <NumberField
        key={field}
        label={labelWithUnit(label, MADE_SPECS[field])}
        hint={hint}
        spec={MADE_SPECS[field]}
        text={draft[field]}
        error={problems[field]}
        onText={(text) => onDraft({ [field]: text })}
      />
    ));
  return (
    <div class="mass-line-fields">
      <SelectField
        label="Its mass"
        value={draft.by}
        options={WAYS}
        onChange={(by) => onDraft({ by: by === "volume" || by === "sheet" ? by : "" })}
      />
      {draft.by !== "" && (
        <SelectField
          label="Material"
          value={draft.material}
          options={stuffs()}
          hint={DENSITIES[draft.material].source}
          onChange={(material) => onDraft({ material: stuffOf(material) })}
        />
      )}
      {draft.by === "volume" && fields(OF_VOLUME)}
      {draft.by === "sheet" && fields(OF_SHEET)}
      {fields(OF_PLACE)}
    </div>
  );
}
