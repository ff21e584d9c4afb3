import type { Book } from "../../../../shared/book/book.ts";
import { findById } from "../../../../shared/book/book.ts";
import { calibrationOf } from "../../../../shared/book/calibration.ts";
import { gapBasis } from "../../../../shared/book/gapBasis.ts";
import { rotorBasis } from "../../../../shared/book/rotorBasis.ts";
import { listed } from "../../../../shared/decide/verdict/attitudeWords.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { asProblem } from "../../../../shared/numeric/errors.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { Mark } from "../../../ui/Mark.tsx";
import { sizeText } from "../words/combination.ts";
import { type Draft, isPropeller, toggled, withText } from "./draft.ts";
import { NO_SKIRT, type PartList } from "./fields.ts";
import { PartChecks } from "./PartChecks.tsx";
import { RangeRow } from "./RangeRow.tsx";

export interface PartsToTryProps {
  readonly book: Book;
  readonly base: Build | null;
  readonly draft: Draft;
  readonly problemAt: (key: string) => string | undefined;
  readonly onDraft: (draft: Draft) => void;
}

const mass = (kilograms: number | undefined) =>
  kilograms === undefined ? "" : formatQuantity(kilograms, "mass");

function rotorNote(book: Book, id: string) {
  if (isPropeller(book, id)) return "open propeller";
  const { basis } = rotorBasis(book, id);
  if (basis === "estimated") return <Mark word="estimated" title="from its geometry, ± 30 %" />;
  return basis === "two-point" ? <Mark word="two-point" /> : null;
}

function sizesHint(book: Book, id: string): string {
  const sizes = findById(book.rotors, id)?.data.sizes ?? [];
  return `else its own: ${listed(sizes.map(({ diameter }) => sizeText(diameter)))}`;
}

function gapHint(book: Book, base: Build | null, id: string): string {
  const skirt = findById(book.skirts, id);
  if (!skirt) return "";
  if (!base) return `else as it stands: ${sizeText(skirt.data.gap)}`;
  const build = { ...base, skirt: id, overrides: {} };
  const stands = asProblem(() => gapBasis(build, skirt, calibrationOf(book, build)));
  if ("problem" in stands) return `else as it stands; ${stands.problem}`;
  const { basis, value } = stands.answered;
  return `else as it stands: ${formatQuantity(value, "length", { digits: 2 })}, ${basis}`;
}

/** Propellers may do without a skirt; each skirt is tried under them once, whatever its gap. */
function WithoutSkirt({ draft, onDraft }: Pick<PartsToTryProps, "draft" | "onDraft">) {
  return (
    <div class="choose-part">
      <label>
        <input
          type="checkbox"
          checked={draft.ticked.skirts.includes(NO_SKIRT)}
          onChange={() => onDraft(toggled(draft, "skirts", NO_SKIRT))}
        />{" "}
        None <span class="quiet small">open propellers alone</span>
      </label>
    </div>
  );
}

/** Parts to try: motors, rotor families with their sizes, packs, skirts with their gaps. */
export function PartsToTry({ book, base, draft, problemAt, onDraft }: PartsToTryProps) {
  const checks = (list: PartList) => ({
    book,
    list,
    draft,
    problemAt,
    onToggle: (id: string) => onDraft(toggled(draft, list, id)),
  });
  const range = (list: "rotors" | "skirts", hint: (id: string) => string) => (id: string, name: string) => (
    <RangeRow
      list={list}
      id={id}
      name={name}
      draft={draft}
      problemAt={problemAt}
      onText={(key, text) => onDraft(withText(draft, key, text))}
      hint={hint(id)}
    />
  );
  return (
    <div class="choose-parts">
      <PartChecks
        {...checks("motors")}
        title="Motors"
        note={(id) => mass(findById(book.motors, id)?.data.mass)}
      />
      <PartChecks
        {...checks("rotors")}
        title="Rotors, by diameter"
        note={(id) => rotorNote(book, id)}
        under={range("rotors", (id) => sizesHint(book, id))}
      />
      <PartChecks
        {...checks("packs")}
        title="Packs"
        note={(id) => mass(findById(book.packs, id)?.data.mass)}
      />
      <PartChecks
        {...checks("skirts")}
        title="Skirts, by gap"
        note={(id) => mass(findById(book.skirts, id)?.data.mass)}
        under={range("skirts", (id) => gapHint(book, base, id))}
        beside={
          draft.ticked.rotors.some((id) => isPropeller(book, id)) && (
            <WithoutSkirt draft={draft} onDraft={onDraft} />
          )
        }
      />
    </div>
  );
}
