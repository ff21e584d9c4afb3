import type { Build } from "../../../shared/model/build.ts";
import { type LedgerLine, MASS_GROUPS, type MassGroup } from "../../../shared/model/ledger.ts";
import { BUILD } from "../../../shared/model/limits.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { isGood, type NumberSpec, needed, readNumber } from "../../../shared/units/readNumber.ts";

/** A line of the ledger while it is typed. */
export interface LineDraft {
  readonly name: string;
  readonly group: MassGroup;
  readonly quantity: string;
  readonly mass: string;
  readonly uncertainty: string;
  readonly basis: LedgerLine["basis"];
}

export type LineProblems = Readonly<Partial<Record<keyof LineDraft, string>>>;

export const QUANTITY: NumberSpec = { dimension: null, limits: BUILD.ledger.quantity, example: "4" };
export const PIECE_MASS: NumberSpec = {
  dimension: "mass",
  unit: "g",
  limits: BUILD.ledger.mass,
  example: "2.5 g",
};
export const PIECE_UNCERTAINTY: NumberSpec = {
  dimension: "mass",
  unit: "g",
  limits: BUILD.ledger.uncertainty,
  example: "0.3 g",
};

const MOST_LETTERS = 120;
const GRAMS = 1000;
/** Grams of a stored number, without the rounding of kilograms. */
const asTyped = (kilograms: number) => `${Number((GRAMS * kilograms).toPrecision(12))} g`;

export const EMPTY_LINE: LineDraft = {
  name: "",
  group: "structure",
  quantity: "1",
  mass: "",
  uncertainty: "",
  basis: "estimated",
};

/** @returns a stored line as it would be typed */
export function draftOfLine({ name, group, quantity, mass, uncertainty, basis }: LedgerLine): LineDraft {
  return {
    name,
    group,
    quantity: Number.isInteger(quantity) ? formatFixed(quantity, 0) : String(quantity),
    mass: asTyped(mass),
    uncertainty: uncertainty === undefined ? "" : asTyped(uncertainty),
    basis,
  };
}

/** @returns the group that a text names */
export const groupOf = (text: string): MassGroup =>
  MASS_GROUPS.find((group) => group === text) ?? "structure";

function nameProblem(name: string, others: readonly LedgerLine[]): string | undefined {
  if (name === "") return "A name is needed, for example “Wheel”.";
  if (name.length > MOST_LETTERS) return `Read ${name.length} letters; allowed: up to ${MOST_LETTERS}.`;
  if (others.some((line) => line.name === name))
    return `“${name}” is a line already: change its quantity, or take another name.`;
  return undefined;
}

/** @returns a typed line, or what is wrong with it, field by field */
export function readLine(
  draft: LineDraft,
  others: readonly LedgerLine[],
): { readonly line: LedgerLine } | { readonly problems: LineProblems } {
  const name = draft.name.trim();
  const quantity = readNumber(QUANTITY, draft.quantity.trim() === "" ? "1" : draft.quantity);
  const mass = draft.mass.trim() === "" ? needed("The mass", PIECE_MASS) : readNumber(PIECE_MASS, draft.mass);
  const uncertainty =
    draft.uncertainty.trim() === "" ? null : readNumber(PIECE_UNCERTAINTY, draft.uncertainty);
  const problem = nameProblem(name, others);
  if (
    problem === undefined &&
    isGood(quantity) &&
    isGood(mass) &&
    (uncertainty === null || isGood(uncertainty))
  )
    return {
      line: {
        name,
        group: draft.group,
        quantity: quantity.value,
        mass: mass.value,
        ...(uncertainty ? { uncertainty: uncertainty.value } : {}),
        basis: draft.basis,
      },
    };
  return {
    problems: {
      ...(problem === undefined ? {} : { name: problem }),
      ...(isGood(quantity) ? {} : { quantity: quantity.message }),
      ...(isGood(mass) ? {} : { mass: mass.message }),
      ...(uncertainty === null || isGood(uncertainty) ? {} : { uncertainty: uncertainty.message }),
    },
  };
}

/** @returns the build with a line in the place of another; null: behind the last */
export function withLine(build: Build, line: LedgerLine, at: number | null): Build {
  const { ledger } = build;
  return {
    ...build,
    ledger: at === null ? [...ledger, line] : ledger.map((each, i) => (i === at ? line : each)),
  };
}

/** @returns the build without a line */
export function withoutLine(build: Build, at: number): Build {
  return { ...build, ledger: build.ledger.filter((_, i) => i !== at) };
}
