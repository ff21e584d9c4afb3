import { type Book, findById } from "../../../../shared/book/book.ts";
import { rotorBody } from "../../../../shared/book/limitsInput.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { LEAST_SPEED_FACTOR } from "../../../../shared/physics/limits/disc.ts";
import { asRead } from "../../../../shared/units/decimalMark.ts";
import { numberText } from "../../../../shared/units/shown.ts";
import {
  DUTY,
  NO_SKIRT,
  type NumberWant,
  type PartList,
  RANGE_ENDS,
  RANGES,
  TARGET,
  WANT_FIELDS,
} from "./fields.ts";
import { unusable } from "./usable.ts";

export type Wanted = ChooseRequest["wants"]["attitudes"][number];

/** The form as typed, nothing checked. */
export interface Draft {
  /** the build that gives the rest */
  readonly build: string;
  readonly ticked: Readonly<Record<PartList, readonly string[]>>;
  /** by field: "rotors.swept-nine.from", "wants.targetMargin", "duties" */
  readonly texts: Readonly<Record<string, string>>;
  readonly attitudes: readonly Wanted[];
  readonly ratings: boolean;
  /** every stack of the build's Fit-up closes */
  readonly closes: boolean;
}

const WORST_DRIVING: Wanted = { angle: "worst", mode: "driving" };

export const wantKey = (want: NumberWant): string => `wants.${want}`;
export const rangeKey = (list: PartList, id: string, end: string): string => `${list}.${id}.${end}`;

/** Safe speed: half of the burst speed. */
const SAFE_SPEED = String(LEAST_SPEED_FACTOR);

/** Of a rotor without a material the burst speed isn't known, and such a limit would keep it out. */
function hasStrength(book: Book, id: string): boolean {
  const rotor = findById(book.rotors, id)?.data;
  return rotor !== undefined && rotorBody(rotor, rotor.sizes[0].diameter) !== null;
}

/** @returns whether a rotor of the book is an open propeller */
export function isPropeller(book: Book, id: string): boolean {
  return findById(book.rotors, id)?.data.kind === "propeller";
}

/** @returns the form as it first stands: all that can be solved with, the build's own skirt and propellers without one, its margin, safe speed and makers' ratings kept */
export function firstDraft(book: Book, build: StoredOf<"builds">): Draft {
  const usable = (list: PartList) =>
    book[list].filter((part) => unusable(book, list, part.id) === null).map(({ id }) => id);
  const { skirt } = build.data;
  const rotors = usable("rotors");
  const bare = rotors.some((id) => isPropeller(book, id)) ? [NO_SKIRT] : [];
  return {
    build: build.id,
    ticked: {
      motors: usable("motors"),
      rotors,
      packs: usable("packs"),
      skirts: [...(skirt === null ? usable("skirts") : [skirt]), ...bare],
    },
    texts: {
      duties: "100",
      [wantKey("targetMargin")]: asRead(numberText(TARGET, build.data.targetMargin)),
      ...(rotors.some((id) => hasStrength(book, id)) ? { [wantKey("leastRotorFactor")]: SAFE_SPEED } : {}),
    },
    attitudes: [WORST_DRIVING],
    ratings: true,
    closes: false,
  };
}

/** @returns the form that a job was asked with */
export function draftOf(request: ChooseRequest): Draft {
  const { wants } = request;
  const texts: Record<string, string> = {
    duties: request.duties.map((duty) => numberText(DUTY, duty)).join(", "),
  };
  for (const { rotor, diameters } of request.rotors)
    for (const end of RANGE_ENDS)
      if (diameters)
        texts[rangeKey("rotors", rotor, end)] = asRead(numberText(RANGES.rotors[end], diameters[end]));
  for (const { skirt, gaps } of request.skirts)
    for (const end of RANGE_ENDS)
      if (skirt !== null && gaps)
        texts[rangeKey("skirts", skirt, end)] = asRead(numberText(RANGES.skirts[end], gaps[end]));
  for (const field of [TARGET, ...WANT_FIELDS]) {
    // A question remembered by an older page lacks what came since.
    const value = wants[field.want] ?? null;
    if (value !== null) texts[wantKey(field.want)] = asRead(numberText(field, value));
  }
  return {
    build: request.build,
    ticked: {
      motors: request.motors,
      rotors: request.rotors.map(({ rotor }) => rotor),
      packs: request.packs,
      skirts: request.skirts.map(({ skirt }) => skirt ?? NO_SKIRT),
    },
    texts,
    attitudes: wants.attitudes,
    ratings: wants.ratings,
    closes: wants.closes,
  };
}

export function withText(draft: Draft, key: string, text: string): Draft {
  return { ...draft, texts: { ...draft.texts, [key]: text } };
}

/** @returns the draft with a part tried, or no longer */
export function toggled(draft: Draft, list: PartList, id: string): Draft {
  const now = draft.ticked[list];
  const next = now.includes(id) ? now.filter((each) => each !== id) : [...now, id];
  return { ...draft, ticked: { ...draft.ticked, [list]: next } };
}

export const sameWanted = (a: Wanted, b: Wanted): boolean => a.angle === b.angle && a.mode === b.mode;

/** @returns the draft with an attitude wanted, or no longer */
export function toggledAttitude(draft: Draft, wanted: Wanted): Draft {
  const rest = draft.attitudes.filter((each) => !sameWanted(each, wanted));
  return { ...draft, attitudes: rest.length < draft.attitudes.length ? rest : [...rest, wanted] };
}

/** @returns the draft without parts that the book no longer has */
export function withoutGone(draft: Draft, book: Book): Draft {
  const there = (list: PartList) =>
    draft.ticked[list].filter((id) => id === NO_SKIRT || book[list].some((part) => part.id === id));
  const ticked = {
    motors: there("motors"),
    rotors: there("rotors"),
    packs: there("packs"),
    skirts: there("skirts"),
  };
  return { ...draft, ticked };
}
