import { labelWithUnit } from "../../../shared/units/shown.ts";
import { TextField } from "../../ui/Field.tsx";
import { NumberField } from "../../ui/NumberField.tsx";
import {
  type AlternativeDraft,
  EMPTY_ALTERNATIVE,
  LEAD_TIME,
  type LineDraft,
  type LineProblems,
  PIECE_MASS,
  PIECE_PRICE,
  PIECE_UNCERTAINTY,
} from "./line.ts";

const NUMBERS = [
  { key: "mass", label: "Mass of a piece", spec: PIECE_MASS, hint: undefined },
  {
    key: "uncertainty",
    label: "Standard uncertainty",
    spec: PIECE_UNCERTAINTY,
    hint: "0 unless given",
  },
  { key: "price", label: "Price of a piece", spec: PIECE_PRICE, hint: "0 unless given" },
  { key: "leadTime", label: "Days until it is there", spec: LEAD_TIME, hint: "0 unless given" },
] as const;

export interface AlternativesProps {
  readonly draft: LineDraft;
  readonly problems: LineProblems;
  readonly onDraft: (alternatives: readonly AlternativeDraft[]) => void;
}

/** What a line may be exchanged for. */
export function Alternatives({ draft: { alternatives }, problems, onDraft }: AlternativesProps) {
  const set = (at: number, change: Partial<AlternativeDraft>) =>
    onDraft(alternatives.map((each, i) => (i === at ? { ...each, ...change } : each)));
  return (
    <>
      {alternatives.map((each, i) => (
        <fieldset class="mass-alternative" key={i}>
          <legend>May be exchanged for</legend>
          <div class="mass-line-fields">
            <TextField
              label="Name"
              value={each.name}
              placeholder="Foam wheel"
              error={problems[`alternatives.${i}.name`]}
              onChange={(name) => set(i, { name })}
            />
            {NUMBERS.map(({ key, label, spec, hint }) => (
              <NumberField
                key={key}
                label={labelWithUnit(label, spec)}
                spec={spec}
                text={each[key]}
                error={problems[`alternatives.${i}.${key}`]}
                hint={hint}
                onText={(text) => set(i, { [key]: text })}
              />
            ))}
          </div>
          <button type="button" class="plain" onClick={() => onDraft(alternatives.filter((_, k) => k !== i))}>
            remove this alternative<span class="visually-hidden"> {each.name}</span>
          </button>
        </fieldset>
      ))}
      <p>
        <button type="button" class="plain" onClick={() => onDraft([...alternatives, EMPTY_ALTERNATIVE])}>
          {alternatives.length === 0 ? "Add what it may be exchanged for" : "Add another alternative"}
        </button>
      </p>
    </>
  );
}
