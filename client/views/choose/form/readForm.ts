import type { Book } from "../../../../shared/book/book.ts";
import { findById } from "../../../../shared/book/book.ts";
import { steppedValues } from "../../../../shared/decide/choose/count.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import { OutOfRangeError } from "../../../../shared/numeric/errors.ts";
import { isGood, type NumberSpec, readNumber } from "../../../../shared/units/readNumber.ts";
import type { Counts } from "./count.ts";
import { type Draft, isPropeller, rangeKey, wantKey } from "./draft.ts";
import {
  DUTY,
  NO_SKIRT,
  PART_LISTS,
  type PartList,
  RANGE_ENDS,
  RANGES,
  TARGET,
  WANT_FIELDS,
} from "./fields.ts";

export interface ReadForm {
  /** null while something can't be read */
  readonly request: ChooseRequest | null;
  /** by the field's key */
  readonly problems: ReadonlyMap<string, string>;
  readonly counts: Counts;
}

type Range = { readonly from: number; readonly to: number; readonly step: number };
type Problems = Map<string, string>;

const EMPTY: Readonly<Record<PartList, string>> = {
  motors: "Choose at least one motor to try.",
  rotors: "Choose at least one rotor family to try.",
  packs: "Choose at least one pack to try.",
  skirts: "Choose at least one skirt to try.",
};
const NO_LIP = "Choose at least one skirt: a rotor in a duct pulls through one.";
const BETWEEN = /;|,\s+|\s+/;
const MOST_DUTIES = 400;

function numberAt(draft: Draft, spec: NumberSpec, key: string, problems: Problems): number | null {
  const text = draft.texts[key] ?? "";
  if (text.trim() === "") return null;
  const reading = readNumber(spec, text);
  if (isGood(reading)) return reading.value;
  problems.set(key, reading.message);
  return null;
}

/** The range of one part as typed; null: nothing typed, as it stands. */
function rangeOf(draft: Draft, list: "rotors" | "skirts", id: string, problems: Problems): Range | null {
  const before = problems.size;
  const key = (end: string) => rangeKey(list, id, end);
  const [from, to, step] = RANGE_ENDS.map((end) => numberAt(draft, RANGES[list][end], key(end), problems));
  if (problems.size > before || (from === null && to === null && step === null)) return null;
  if (from === null) {
    problems.set(key("from"), `The range has no start, for example "${RANGES[list].from.example}".`);
    return null;
  }
  return { from, to: to ?? from, step: step ?? 0 };
}

/** How many values a range has; what is wrong with it is told beside its field. */
function valuesIn(range: Range, list: "rotors" | "skirts", id: string, problems: Problems): number | null {
  const { from, to, step } = range;
  const example = RANGES[list].step.example;
  const refuse = (end: string, message: string) => {
    problems.set(rangeKey(list, id, end), message);
    return null;
  };
  if (to < from) return refuse("to", "The range ends below its start.");
  if (to > from && !(step > 0)) return refuse("step", `A step above 0 is needed, for example "${example}".`);
  try {
    return steppedValues("", range).length;
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    return refuse("step", `The step is too fine: ${error.allowed}, for example "${example}".`);
  }
}

interface Ranged {
  readonly ranges: ReadonlyMap<string, Range>;
  /** @returns sizes or gaps of some of the ticked parts; null where one of them can't be read */
  readonly count: (of: (id: string) => boolean) => number | null;
}

function rangesOf(
  draft: Draft,
  list: "rotors" | "skirts",
  own: (id: string) => number,
  problems: Problems,
): Ranged {
  const ranges = new Map<string, Range>();
  const counts = new Map<string, number | null>();
  for (const id of draft.ticked[list]) {
    const before = problems.size;
    const range = rangeOf(draft, list, id, problems);
    if (range) ranges.set(id, range);
    const values = range ? (valuesIn(range, list, id, problems) ?? 0) : own(id);
    counts.set(id, problems.size > before ? null : values);
  }
  const count: Ranged["count"] = (of) =>
    [...counts].reduce<number | null>((sum, [id, values]) => {
      if (!of(id)) return sum;
      return sum === null || values === null ? null : sum + values;
    }, 0);
  return { ranges, count };
}

function dutiesOf(draft: Draft, problems: Problems): number[] {
  const parts = (draft.texts.duties ?? "").replaceAll("%", " ").split(BETWEEN).filter(Boolean);
  const read = (parts.length > 0 ? parts : [""]).map((part) => readNumber(DUTY, part));
  const wrong = read.find((each) => !isGood(each));
  if (wrong && !isGood(wrong)) problems.set("duties", wrong.message);
  else if (parts.length > MOST_DUTIES)
    problems.set("duties", `Read ${parts.length} throttles; allowed: up to ${MOST_DUTIES}.`);
  return [...new Set(read.flatMap((each) => (isGood(each) ? [each.value] : [])))];
}

function wantsOf(draft: Draft, problems: Problems): ChooseRequest["wants"] {
  const open = Object.fromEntries(
    WANT_FIELDS.map((field) => [field.want, numberAt(draft, field, wantKey(field.want), problems)]),
  ) as Omit<ChooseRequest["wants"], "attitudes" | "ratings" | "closes" | "targetMargin">;
  const key = wantKey("targetMargin");
  const targetMargin = numberAt(draft, TARGET, key, problems);
  const nothing = readNumber(TARGET, "");
  if (targetMargin === null && !problems.has(key) && !isGood(nothing)) problems.set(key, nothing.message);
  if (draft.attitudes.length === 0)
    problems.set("wants.attitudes", "Tick at least one attitude that must hold.");
  return {
    ...open,
    targetMargin: targetMargin ?? 1,
    attitudes: [...draft.attitudes],
    ratings: draft.ratings,
    closes: draft.closes,
  };
}

/**
 * Reads the whole form.
 *
 * @returns the question to the server, or what is wrong beside which field; and how many combinations it makes, counted as the server does
 */
export function readForm(book: Book, draft: Draft): ReadForm {
  const problems: Problems = new Map();
  if (!findById(book.builds, draft.build)) problems.set("build", "Choose the build that gives the rest.");
  for (const list of PART_LISTS) if (draft.ticked[list].length === 0) problems.set(list, EMPTY[list]);
  const sizes = (id: string) => findById(book.rotors, id)?.data.sizes.length ?? 0;
  const rotors = rangesOf(draft, "rotors", sizes, problems);
  const skirts = rangesOf(draft, "skirts", () => 1, problems);
  const ducted = (id: string) => !isPropeller(book, id);
  const lip = draft.ticked.skirts.some((id) => id !== NO_SKIRT);
  if (draft.ticked.rotors.some(ducted) && !lip && !problems.has("skirts")) problems.set("skirts", NO_LIP);
  const duties = dutiesOf(draft, problems);
  const wants = wantsOf(draft, problems);
  const { motors, packs } = draft.ticked;
  const request: ChooseRequest = {
    build: draft.build,
    motors: [...motors],
    rotors: draft.ticked.rotors.map((rotor) => ({ rotor, diameters: rotors.ranges.get(rotor) })),
    packs: [...packs],
    skirts: draft.ticked.skirts.map((skirt) =>
      skirt === NO_SKIRT ? { skirt: null } : { skirt, gaps: skirts.ranges.get(skirt) },
    ),
    duties,
    wants,
  };
  const counts = {
    motors: motors.length,
    rotors: rotors.count(ducted),
    propellers: rotors.count((id) => !ducted(id)),
    packs: packs.length,
    skirts: skirts.count((id) => id !== NO_SKIRT),
    stands: draft.ticked.skirts.length,
    duties: problems.has("duties") ? null : duties.length,
  };
  return { request: problems.size === 0 ? request : null, problems, counts };
}
