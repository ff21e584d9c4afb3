import type { Book } from "../../../../shared/book/resolve.ts";
import { isTyped } from "../../../../shared/book/size/need/bookOfNeed.ts";
import type { PartKey, TypedNeed } from "../../../../shared/book/size/need/typedNeed.ts";
import { SettingField } from "../../../ui/SettingField.tsx";
import { BALANCE_FIELDS, MASS_FIELD, type NeedField, PART_FIELDS } from "./fields.ts";

interface Props {
  readonly need: TypedNeed;
  readonly onNeed: (need: TypedNeed) => void;
}

interface NumbersProps extends Props {
  readonly fields: readonly NeedField[];
}

/** Numbers of a need, one field each. */
function Numbers({ fields, need, onNeed }: NumbersProps) {
  return (
    <>
      {fields.map(({ key, label, spec }) => (
        <SettingField
          key={key}
          label={label}
          spec={spec}
          value={need.numbers[key]}
          onValue={(value) => onNeed({ ...need, numbers: { ...need.numbers, [key]: value } })}
        />
      ))}
    </>
  );
}

/** What the vehicle weighs. */
export function MassField(props: Props) {
  return <Numbers {...props} fields={[MASS_FIELD]} />;
}

/** Where its weight acts, folded: a build's usual figures stand until then. */
export function BalanceFields(props: Props) {
  return (
    <details>
      <summary>Wheels and balance</summary>
      <Numbers {...props} fields={BALANCE_FIELDS} />
    </details>
  );
}

const PARTS = {
  surface: { label: "Surface", collection: "surfaces" },
  skirt: { label: "Skirt", collection: "skirts" },
  pack: { label: "Pack", collection: "packs" },
  motor: { label: "Motor as strong as", collection: "motors" },
} as const satisfies Readonly<Record<PartKey, { label: string; collection: keyof Book }>>;

const EDGES = [
  ["square", "square"],
  ["thin", "thin"],
  ["rounded", "rounded"],
] as const;

/** One part of a need: of the book, or typed here with its own numbers. */
export function PartFields({
  book,
  part,
  ...props
}: Props & { readonly book: Book; readonly part: PartKey }) {
  const { need, onNeed } = props;
  const { label, collection } = PARTS[part];
  const chosen = need.parts[part];
  const records = (
    book[collection] as readonly { id: string; data: { name: string; retired?: string } }[]
  ).filter(({ id, data }) => !isTyped(id) && (!data.retired || id === chosen));
  const choose = (id: string) => onNeed({ ...need, parts: { ...need.parts, [part]: id === "" ? null : id } });
  return (
    <>
      <label class="field-label">
        {label}
        <select value={chosen ?? ""} onChange={({ currentTarget: { value } }) => choose(value)}>
          {records.map(({ id, data }) => (
            <option key={id} value={id}>
              {data.name}
            </option>
          ))}
          <option value="">typed here</option>
        </select>
      </label>
      {chosen === null && (
        <div class="size-typed">
          <Numbers {...props} fields={PART_FIELDS[part]} />
          {part === "skirt" && (
            <label class="field-label">
              Edge of the lip
              <select
                value={need.edge}
                onChange={({ currentTarget: { value } }) =>
                  onNeed({ ...need, edge: EDGES.find(([key]) => key === value)?.[0] ?? "square" })
                }
              >
                {EDGES.map(([key, name]) => (
                  <option key={key} value={key}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
        </div>
      )}
    </>
  );
}
