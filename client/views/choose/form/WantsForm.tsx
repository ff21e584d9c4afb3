import { namedAttitudes } from "../../../../shared/book/attitudes.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { labelWithUnit } from "../../../../shared/units/shown.ts";
import { NumberField } from "../../../ui/NumberField.tsx";
import { type Draft, sameWanted, toggledAttitude, type Wanted, wantKey, withText } from "./draft.ts";
import { TARGET, WANT_FIELDS, type WantField } from "./fields.ts";

export interface WantsFormProps {
  readonly base: Build | null;
  readonly draft: Draft;
  readonly problemAt: (key: string) => string | undefined;
  readonly onDraft: (draft: Draft) => void;
}

const MODES = ["parked", "driving"] as const;

interface Choice {
  readonly title: string;
  readonly angle: Wanted["angle"];
}

/** The worst, the ceiling, the wall, the build's own; and what else is wanted. */
function choicesOf(base: Build | null, draft: Draft): Choice[] {
  const known: Choice[] = [
    { title: "Worst", angle: "worst" },
    ...(base ? namedAttitudes(base) : []).map(({ title, angle }) => ({
      title: `${title} ${angle.toFixed(0)}°`,
      angle,
    })),
  ];
  const other = draft.attitudes.filter(({ angle }) => !known.some((each) => each.angle === angle));
  const angles = [...new Set(other.map(({ angle }) => angle))];
  return [...known, ...angles.map((angle) => ({ title: `${angle}°`, angle }))];
}

/** What must hold. */
export function WantsForm({ base, draft, problemAt, onDraft }: WantsFormProps) {
  const problem = problemAt("wants.attitudes");
  return (
    <div class="choose-wants">
      <div>
        <WantedTable choices={choicesOf(base, draft)} draft={draft} onDraft={onDraft} />
        {problem && (
          <span class="field-error choose-wanted-error" role="alert">
            {problem}
          </span>
        )}
      </div>
      <div class="choose-wants-fields">
        {[TARGET, ...WANT_FIELDS].map((spec) => (
          <WantInput key={spec.want} spec={spec} draft={draft} problemAt={problemAt} onDraft={onDraft} />
        ))}
        <label class="choose-ratings">
          <input
            type="checkbox"
            checked={draft.ratings}
            onChange={() => onDraft({ ...draft, ratings: !draft.ratings })}
          />{" "}
          keep to the makers' ratings of motors and cells, the winding's limit among them
        </label>
        {(base?.stacks.length ?? 0) > 0 && (
          <label class="choose-ratings">
            <input
              type="checkbox"
              checked={draft.closes}
              onChange={() => onDraft({ ...draft, closes: !draft.closes })}
            />{" "}
            every stack of the build's Fit-up closes, at its worst case
          </label>
        )}
      </div>
    </div>
  );
}

interface WantedTableProps extends Pick<WantsFormProps, "draft" | "onDraft"> {
  readonly choices: readonly Choice[];
}

/** On which attitudes it must hold, parked and driving. */
function WantedTable({ choices, draft, onDraft }: WantedTableProps) {
  return (
    <table class="choose-wanted">
      <thead>
        <tr>
          <th scope="col">Must hold</th>
          {MODES.map((mode) => (
            <th key={mode} scope="col" class="choose-mode">
              {mode}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {choices.map(({ title, angle }) => (
          <tr key={String(angle)}>
            <th scope="row" class="choose-attitude">
              {title}
            </th>
            {MODES.map((mode) => (
              <td key={mode}>
                <label>
                  <span class="visually-hidden">
                    {title}, {mode}
                  </span>
                  <input
                    type="checkbox"
                    checked={draft.attitudes.some((each) => sameWanted(each, { angle, mode }))}
                    onChange={() => onDraft(toggledAttitude(draft, { angle, mode }))}
                  />
                </label>
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface WantInputProps extends Omit<WantsFormProps, "base"> {
  readonly spec: WantField;
}

/** A number that must be kept to, where one is typed. */
function WantInput({ spec, draft, problemAt, onDraft }: WantInputProps) {
  const key = wantKey(spec.want);
  return (
    <NumberField
      label={spec.dimension === "duration" ? spec.label : labelWithUnit(spec.label, spec)}
      spec={spec}
      text={draft.texts[key] ?? ""}
      placeholder={spec.want === "targetMargin" ? spec.example : "not asked for"}
      hint={spec.hint}
      error={problemAt(key)}
      onText={(text) => onDraft(withText(draft, key, text))}
    />
  );
}
