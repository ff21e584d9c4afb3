import { useState } from "preact/hooks";
import type { PartLine } from "../../../../shared/book/mass/ledger.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { isGood, readNumber } from "../../../../shared/units/readNumber.ts";
import { labelWithUnit, typedText } from "../../../../shared/units/shown.ts";
import { NumberField } from "../../../ui/NumberField.tsx";
import { MADE_SPECS } from "../madeDraft.ts";

const PARTS = ["motor", "rotor", "pack", "skirt"] as const satisfies readonly PartLine[];
const ENDS = [
  ["fromRear", "ahead of the rear axle"],
  ["height", "over the surface"],
] as const;
type End = (typeof ENDS)[number][0];

const keyOf = (part: PartLine, end: End) => `${part}.${end}`;

function firstTexts(build: Build): Record<string, string> {
  return Object.fromEntries(
    PARTS.flatMap((part) =>
      ENDS.map(([end]) => {
        const value = build.places[part]?.[end];
        return [keyOf(part, end), value === undefined ? "" : typedText(value, "length")];
      }),
    ),
  );
}

/** Places as typed, and what is wrong with them: a part has both numbers or none. */
function readPlaces(texts: Readonly<Record<string, string>>) {
  const problems: Record<string, string> = {};
  const places: Build["places"] = {};
  for (const part of PARTS) {
    if (ENDS.every(([end]) => texts[keyOf(part, end)].trim() === "")) continue;
    const [fromRear, height] = ENDS.map(([end]) => {
      const reading = readNumber(MADE_SPECS[end], texts[keyOf(part, end)]);
      if (isGood(reading)) return reading.value;
      problems[keyOf(part, end)] = reading.message;
      return 0;
    });
    places[part] = { fromRear, height };
  }
  return { problems, places };
}

export interface PartPlacesProps {
  readonly build: Build;
  /** @returns why it was refused; null where it was stored */
  readonly onSave: (build: Build) => Promise<string | null>;
}

/** Where motor, rotor, pack and skirt stand; lines of the ledger say it of themselves. */
export function PartPlaces({ build, onSave }: PartPlacesProps) {
  const [texts, setTexts] = useState(() => firstTexts(build));
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const save = async (event: Event) => {
    event.preventDefault();
    const read = readPlaces(texts);
    setProblems(read.problems);
    if (Object.keys(read.problems).length > 0) return;
    setRefusal(await onSave({ ...build, places: read.places }));
  };
  return (
    <details class="mass-places">
      <summary>Where motor, rotor, pack and skirt stand</summary>
      <form onSubmit={(event) => void save(event)} noValidate>
        <div class="mass-line-fields">
          {PARTS.filter((part) => part !== "skirt" || build.skirt !== null).flatMap((part) =>
            ENDS.map(([end, words]) => (
              <NumberField
                key={keyOf(part, end)}
                label={`${part.charAt(0).toUpperCase()}${part.slice(1)}, ${labelWithUnit(words, MADE_SPECS[end])}`}
                spec={MADE_SPECS[end]}
                text={texts[keyOf(part, end)]}
                error={problems[keyOf(part, end)]}
                onText={(text) => setTexts({ ...texts, [keyOf(part, end)]: text })}
              />
            )),
          )}
        </div>
        {refusal && (
          <p class="field-error" role="alert">
            {refusal}
          </p>
        )}
        <button type="submit">Save the places</button>
      </form>
    </details>
  );
}
