import type { Bench } from "../../../../shared/book/bench.ts";
import { findById } from "../../../../shared/book/bench.ts";
import { calibrationOf } from "../../../../shared/book/calibration.ts";
import { gapBasis } from "../../../../shared/book/gapBasis.ts";
import { rotorBasis } from "../../../../shared/book/rotorBasis.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { OutOfRangeError } from "../../../../shared/numeric/errors.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { Mark } from "../../../ui/Mark.tsx";
import { listed } from "../../../ui/verdictWords.ts";
import { mmText } from "../words/set.ts";
import { type Draft, toggled, withText } from "./draft.ts";
import type { PartList } from "./fields.ts";
import { PartChecks } from "./PartChecks.tsx";
import { RangeRow } from "./RangeRow.tsx";

export interface AdmissionsProps {
  readonly bench: Bench;
  readonly base: Build | null;
  readonly draft: Draft;
  readonly problemAt: (key: string) => string | undefined;
  readonly onDraft: (draft: Draft) => void;
}

const mass = (kilograms: number | undefined) =>
  kilograms === undefined ? "" : formatQuantity(kilograms, "mass");

function rotorNote(bench: Bench, id: string) {
  const { basis } = rotorBasis(bench, id);
  if (basis === "estimated") return <Mark word="estimated" title="from its geometry, ± 30 %" />;
  return basis === "two-point" ? <Mark word="two-point" /> : null;
}

function sizesHint(bench: Bench, id: string): string {
  const sizes = findById(bench.rotors, id)?.data.sizes ?? [];
  return `else its own: ${listed(sizes.map(({ diameter }) => mmText(diameter)))}`;
}

function gapHint(bench: Bench, base: Build | null, id: string): string {
  const skirt = findById(bench.skirts, id);
  if (!skirt) return "";
  if (!base) return `else as it stands: ${mmText(skirt.data.gap)}`;
  const build = { ...base, skirt: id, overrides: {} };
  try {
    const { basis, value } = gapBasis(build, skirt, calibrationOf(bench, build));
    return `else as it stands: ${formatQuantity(value, "length", { digits: 2 })}, ${basis}`;
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    return `else as it stands; ${error.message}`;
  }
}

/** What is admitted: motors, rotor families with their sizes, packs, skirts with their gaps. */
export function Admissions({ bench, base, draft, problemAt, onDraft }: AdmissionsProps) {
  const checks = (list: PartList) => ({
    bench,
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
    <>
      <PartChecks
        {...checks("motors")}
        title="Motors"
        note={(id) => mass(findById(bench.motors, id)?.data.mass)}
      />
      <PartChecks
        {...checks("rotors")}
        title="Rotors, by diameter"
        note={(id) => rotorNote(bench, id)}
        under={range("rotors", (id) => sizesHint(bench, id))}
      />
      <PartChecks
        {...checks("packs")}
        title="Packs"
        note={(id) => mass(findById(bench.packs, id)?.data.mass)}
      />
      <PartChecks
        {...checks("skirts")}
        title="Skirts, by gap"
        note={(id) => mass(findById(bench.skirts, id)?.data.mass)}
        under={range("skirts", (id) => gapHint(bench, base, id))}
      />
    </>
  );
}
