import type { Family } from "../../../shared/book/size/families.ts";
import { correctionAt } from "../../../shared/book/testedSizes.ts";
import { dutyOf } from "../../../shared/decide/size/duty.ts";
import type { SizeBuild } from "../../../shared/decide/size/input.ts";
import { pullForHold } from "../../../shared/decide/size/need.ts";
import type { SizeRow } from "../../../shared/decide/size/row.ts";
import { type Nearest, sizesOf } from "../../../shared/decide/size/size.ts";
import { asProblem } from "../../../shared/numeric/errors.ts";
import type { Question } from "./question.ts";

/** One family over the sizes. */
export interface Sized {
  readonly id: string;
  readonly name: string;
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
  /** null with a propeller */
  readonly duty: { readonly pressure: number; readonly flow: number; readonly airPower: number } | null;
  readonly families: readonly Sized[];
}

export type Reply = { readonly answered: Answered } | { readonly problem: string };

function buildOf({ build }: Question, { rotor, sizes }: Family): SizeBuild {
  if ("thrust" in rotor) return { ...build, rotor };
  const rotorAt = (diameter: number) => ({
    ...rotor,
    diameter,
    sizeCorrection: correctionAt(sizes, diameter),
  });
  return { ...build, rotor, rotorAt };
}

function sizedOf(question: Question, family: Family): Sized {
  const { allows, hold, cell, diameters } = question;
  const { id, name, estimated, body } = family;
  const asked = {
    build: buildOf(question, family),
    allows: { ...allows, rotor: body },
    need: { hold },
    cell,
  };
  const sizes = asProblem(() => sizesOf(asked, diameters));
  const nothing = { rows: [], least: null, nearest: null };
  return "problem" in sizes
    ? { id, name, estimated, ...nothing, problem: sizes.problem }
    : { id, name, estimated, ...sizes.answered, problem: null };
}

/** @returns every family over the sizes, or in words why the need itself has no answer */
export function replyTo(question: Question): Reply {
  const { build, hold, families } = question;
  return asProblem(() => {
    const pull = pullForHold(build.vehicle, hold);
    return {
      pull,
      duty: build.skirt && dutyOf(build, build.skirt, pull),
      families: families.map((family) => sizedOf(question, family)),
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
