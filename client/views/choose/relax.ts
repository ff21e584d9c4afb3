import type { Limit } from "../../../shared/decide/choose/result.ts";
import type { ChooseRequest } from "../../../shared/model/api/choose.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";
import { formatQuantity, inUnit, withUnit } from "../../../shared/units/format.ts";
import { decimalsOf, unitOf } from "../../../shared/units/showing.ts";
import type { Combination, MissedAnswer } from "./answers.ts";
import { valueText } from "./columns.ts";
import { type Draft, wantKey, withText } from "./form/draft.ts";
import type { NumberWant } from "./form/fields.ts";

type Relaxation = MissedAnswer["relaxations"][number];

/** A change of one want that lets a combination in. */
export interface Relief {
  readonly limit: string;
  /** combination that it lets in */
  readonly index: number;
  /** "Relax the margin to 1.42 ×" */
  readonly label: string;
  /** the wants with that change; null where no wish can be relaxed so far */
  readonly apply: ((draft: Draft) => Draft) | null;
  readonly caution: string | null;
}

const down = (value: number, decimals: number) => Math.floor(value * 10 ** decimals) / 10 ** decimals;
const up = (value: number, decimals: number) => Math.ceil(value * 10 ** decimals) / 10 ** decimals;

const toText = (want: NumberWant, shown: string) => (draft: Draft) => withText(draft, wantKey(want), shown);

interface Wish {
  readonly want: NumberWant;
  readonly what: string;
  /** what it is of, or the sign behind a mere number */
  readonly of: DimensionName | "×" | "";
  /** rounded so that the combination still gets in, to so many decimals of the quantity's first unit */
  readonly decimals: number;
  readonly round: typeof up;
}

const isMere = (of: Wish["of"]): of is "×" | "" => of === "×" || of === "";
const signOf = (of: "×" | ""): string => of && `\u202f${of}`;

/** As one would type it, with its unit. */
function textOf({ of, decimals, round }: Wish, si: number): string {
  if (isMere(of)) return String(round(si, decimals));
  return withUnit(String(round(inUnit(si, of), decimalsOf(of, decimals))), unitOf(of));
}

const MARGIN: Wish = {
  want: "targetMargin",
  what: "the margin",
  of: "×",
  decimals: 2,
  round: down,
};
/** What lets a combination in: a wish that is relaxed, the makers' ratings left aside, or the housing drawn anew; null: nothing does. */
const CURES: Readonly<Record<Limit, Wish | "ratings" | "housing" | null>> = {
  point: null,
  parked: MARGIN,
  driving: MARGIN,
  crossing: {
    want: "leastCrossing",
    what: "the margin over joints",
    of: MARGIN.of,
    decimals: MARGIN.decimals,
    round: MARGIN.round,
  },
  windingTemperature: {
    want: "mostWinding",
    what: "the winding's limit",
    of: "temperature",
    decimals: 0,
    round: up,
  },
  rotorFactor: {
    want: "leastRotorFactor",
    what: "the rotor's safety against bursting",
    of: "×",
    decimals: 2,
    round: down,
  },
  motorCurrent: "ratings",
  motorVoltage: "ratings",
  cellCurrent: "ratings",
  height: {
    want: "mostHeight",
    what: "the total height",
    of: "length",
    decimals: 1,
    round: up,
  },
  clearance: "housing",
  price: { want: "mostPrice", what: "the price", of: "", decimals: 2, round: up },
  time: {
    want: "leastTime",
    what: "the minutes",
    of: "duration",
    decimals: 1,
    round: down,
  },
  keptTime: {
    want: "leastKeptTime",
    what: "the minutes that the margin is kept",
    of: "duration",
    decimals: 1,
    round: down,
  },
};
const cureOf = (limit: string) =>
  (CURES as Readonly<Record<string, Wish | "ratings" | "housing" | null>>)[limit];
const LEAST_MARGIN = 1;
const SAME = 1e-9;

const OVER_RATING = "Motors and cells over their makers' ratings overheat, some in seconds.";
const HOTTER = "A maker's own limit of the winding still holds, where the motor states one.";
const FAST_ROTOR = "A rotor near its burst speed throws fragments: guard, goggles, out of its plane.";

const CAUTIONS: Readonly<Record<string, string>> = { rotorFactor: FAST_ROTOR, windingTemperature: HOTTER };

/** The makers' word stands in the way, not a wish: it can be left aside, at one's own risk. */
function withoutRatings({ limit, index }: Relaxation): Relief {
  const label = "Leave the makers' ratings aside";
  return { limit, index, label, apply: (draft) => ({ ...draft, ratings: false }), caution: OVER_RATING };
}

/** The housing stands in the way: it can be drawn anew. */
function withoutHousing({ limit, to, index }: Relaxation): Relief {
  const short = formatQuantity(-to, "length", { decimals: 2 });
  const label = `Draw the housing anew: it is ${short} short at worst`;
  return { limit, index, label, apply: (draft) => ({ ...draft, closes: false }), caution: null };
}

function isWish(relaxation: Relaxation, wish: Wish, wants: ChooseRequest["wants"]): boolean {
  const wanted = wants[wish.want];
  return wanted !== null && Math.abs(wanted - relaxation.from) <= SAME * Math.abs(wanted);
}

/** @returns which want to change, to what, so that a combination gets in */
export function reliefOf(relaxation: Relaxation, wants: ChooseRequest["wants"]): Relief {
  const { limit, to, index } = relaxation;
  const wish = cureOf(limit);
  if (wish === "housing") return withoutHousing(relaxation);
  if (!wish || wish === "ratings" || !isWish(relaxation, wish, wants)) return withoutRatings(relaxation);
  if (wish === MARGIN && to < LEAST_MARGIN) {
    const label = `The most that any combination has is ${valueText("margin", to)}: it falls, whatever margin is wanted`;
    return { limit, index, label, apply: null, caution: null };
  }
  const shown = textOf(wish, to);
  const label = `Relax ${wish.what} to ${shown}${isMere(wish.of) ? signOf(wish.of) : ""}`;
  const caution = CAUTIONS[limit] ?? null;
  return { limit, index, label, apply: toText(wish.want, shown), caution };
}

/** @returns the changes of all wants that let one combination in; null where no wishes can be relaxed so far */
export function reliefOfCombination(
  { index, broken }: Combination,
  wants: ChooseRequest["wants"],
): Relief | null {
  const margins = broken.filter(({ limit }) => cureOf(limit) === MARGIN);
  const least = Math.min(...margins.map(({ value }) => value ?? 0));
  const others = broken.filter(({ limit }) => cureOf(limit) !== MARGIN);
  const asked = margins.length > 0 ? [{ ...margins[0], value: least }, ...others] : others;
  const reliefs = asked.map(({ limit, value, allowed }) =>
    value === null || allowed === null ? null : reliefOf({ limit, from: allowed, to: value, index }, wants),
  );
  const applied = reliefs.flatMap((relief) => (relief?.apply ? [relief] : []));
  if (applied.length < asked.length || applied.length === 0) return null;
  const labels = [...new Set(applied.map(({ label }) => label))];
  return {
    limit: applied[0].limit,
    index,
    label: labels.map((label, i) => (i === 0 ? label : decapitalised(label))).join(", "),
    apply: (draft) => applied.reduce((changed, { apply }) => apply?.(changed) ?? changed, draft),
    caution: applied.find(({ caution }) => caution !== null)?.caution ?? null,
  };
}

const decapitalised = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
