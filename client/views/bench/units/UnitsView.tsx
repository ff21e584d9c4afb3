import { useState } from "preact/hooks";
import type { BookState } from "../../../../shared/model/api/book.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { CHOSEN, type ShownUnits, UNIT_SETS } from "../../../../shared/units/showing.ts";
import { href } from "../../../app/router.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentUnits, showIn } from "../../../state/book.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { SelectField } from "../../../ui/Field.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { choiceOf, setOf, withUnitOf } from "./choices.ts";

const SETS = [
  ["metric", "Metric"],
  ["inch", "Inch"],
] as const;
/** Quantities that tell the sets apart at a glance. */
const TOLD_BY = ["length", "mass", "pressure", "flow", "temperature"] as const;

const SENTENCES = {
  metric: "This book is shown in metric units.",
  inch: "This book is shown in inches, ounces and inches of water.",
  own: "This book is shown in units of your own choice.",
} as const;

/** In which units the whole book is shown: one of two sets, and any quantity otherwise. */
export default function UnitsView() {
  const [problem, setProblem] = useState<string | null>(null);
  const units = currentUnits.value;
  const choose = async (next: ShownUnits) => {
    try {
      showIn((await api.put<BookState>("/bench/units", next)).units);
      setProblem(null);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  return (
    <div class="bench-units">
      <Answer sentence={SENTENCES[setOf(units)]}>
        Forms, charts, tables, files and sentences follow, on every page that has this book open.{" "}
        <a href={href("bench")}>Back to the list</a>
      </Answer>
      {problem && <Problem message={problem} />}
      <fieldset>
        <legend>Begin with a set</legend>
        {SETS.map(([name, label]) => (
          <label key={name}>
            <input
              type="radio"
              name="units-set"
              checked={setOf(units) === name}
              onChange={() => void choose(UNIT_SETS[name])}
            />{" "}
            {label}{" "}
            <span class="quiet">
              {TOLD_BY.map((each) => choiceOf(each, UNIT_SETS[name]).value).join(", ")}
            </span>
          </label>
        ))}
      </fieldset>
      <h2>Each quantity</h2>
      <div class="bench-fields">
        {CHOSEN.map((name) => (
          <QuantityField key={name} name={name} units={units} onUnits={(next) => void choose(next)} />
        ))}
      </div>
      <p class="quiet small">
        A field takes any unit, whatever is chosen here. A bare number is meant in the unit that stands beside
        the field. What was typed is kept as it was typed.
      </p>
    </div>
  );
}

interface QuantityFieldProps {
  readonly name: DimensionName;
  readonly units: ShownUnits;
  readonly onUnits: (units: ShownUnits) => void;
}

function QuantityField({ name, units, onUnits }: QuantityFieldProps) {
  const { label, options, value } = choiceOf(name, units);
  return (
    <SelectField
      label={label}
      value={value}
      options={options}
      onChange={(unit) => onUnits(withUnitOf(units, name, unit))}
    />
  );
}
