import { useId } from "preact/hooks";
import { headed, unitOf } from "../../../../shared/units/showing.ts";
import { NumberInput } from "../../../ui/NumberField.tsx";
import type { Draft } from "./draft.ts";
import { rangeKey } from "./draft.ts";
import { RANGE_ENDS, RANGES } from "./fields.ts";

export interface RangeRowProps {
  readonly list: "rotors" | "skirts";
  readonly id: string;
  readonly name: string;
  readonly draft: Draft;
  readonly problemAt: (key: string) => string | undefined;
  readonly onText: (key: string, text: string) => void;
  /** what stands where nothing is typed */
  readonly hint: string;
}

const SHORT = { from: "from", to: "to", step: "step" } as const;

/** From, to and step of one part; nothing typed: as it stands. */
export function RangeRow({ list, id, name, draft, problemAt, onText, hint }: RangeRowProps) {
  const own = useId();
  const problems = RANGE_ENDS.flatMap((end) => problemAt(rangeKey(list, id, end)) ?? []);
  return (
    <div class="choose-range">
      <div class="choose-range-fields">
        {RANGE_ENDS.map((end) => {
          const key = rangeKey(list, id, end);
          return (
            <label key={end} for={`${own}-${end}`}>
              <span aria-hidden="true">{SHORT[end]}</span>
              <NumberInput
                spec={RANGES[list][end]}
                digits
                name={`${headed(RANGES[list][end].label, "length")}, ${name}`}
                input={{
                  id: `${own}-${end}`,
                  "aria-invalid": problemAt(key) ? "true" : undefined,
                  "aria-describedby": problems.length > 0 ? `${own}-problem` : undefined,
                }}
                placeholder=""
                text={draft.texts[key] ?? ""}
                onText={(text) => onText(key, text)}
              />
            </label>
          );
        })}
        <span class="quiet small">{unitOf("length")}</span>
      </div>
      {problems.length > 0 ? (
        <span class="field-error" id={`${own}-problem`} role="alert">
          {problems[0]}
        </span>
      ) : (
        <span class="field-hint">{hint}</span>
      )}
    </div>
  );
}
