import type { Family, RotorKind } from "../../../shared/book/size/families.ts";
import { familySizes } from "../../../shared/book/size/familySizes.ts";
import { type Duty, dutyOf } from "../../../shared/decide/size/duty.ts";
import { pullForHold } from "../../../shared/decide/size/need.ts";
import type { SizeRow } from "../../../shared/decide/size/row.ts";
import type { Nearest } from "../../../shared/decide/size/size.ts";
import { type Answer, asProblem } from "../../../shared/numeric/errors.ts";
import type { AskedSide, Question } from "./question.ts";

/** One family over the sizes. */
export interface Sized {
  readonly id: string;
  readonly name: string;
  readonly kind: RotorKind;
  readonly estimated: boolean;
  readonly rows: readonly SizeRow[];
  /** of the rows; null: none keeps every limit */
  readonly least: number | null;
  readonly nearest: Nearest | null;
  /** why it has no rows */
  readonly problem: string | null;
}

export interface Answered {
  /** with the gap as set [N] */
  readonly pull: number;
  /** of the cavity; null for a propeller's build */
  readonly duty: Duty | null;
  readonly families: readonly Sized[];
}

export type Reply = Answer<Answered>;

function sizedOf(question: Question, side: AskedSide, family: Family): Sized {
  const { id, name, estimated } = family;
  const sizes = asProblem(() => familySizes(question, side.numbers, family, side.diameters));
  const named = { id, name, kind: side.kind, estimated };
  return "problem" in sizes
    ? { ...named, rows: [], least: null, nearest: null, problem: sizes.problem }
    : { ...named, ...sizes.answered, problem: null };
}

/** @returns every family over the sizes, or in words why the need itself has no answer */
export function replyTo(question: Question): Reply {
  const { sides, hold } = question;
  return asProblem(() => {
    const [first] = sides;
    const { kind, numbers } = first;
    const pull = pullForHold(numbers.vehicle, hold);
    return {
      pull,
      duty: kind === "ducted" && numbers.skirt ? dutyOf(numbers, numbers.skirt, pull) : null,
      families: sides.flatMap((side) => side.families.map((family) => sizedOf(question, side, family))),
    };
  });
}

/** @returns the best row of a family; null where none keeps every limit */
export const bestOf = ({ rows, least }: Sized): SizeRow | null => (least === null ? null : rows[least]);

/** @returns the family whose best row takes least from the pack; null where none has one */
export function foremost({ families }: Answered): Sized | null {
  const power = (each: Sized) => bestOf(each)?.packPower ?? Number.POSITIVE_INFINITY;
  const first = [...families].sort((a, b) => power(a) - power(b))[0];
  return first && bestOf(first) ? first : null;
}
