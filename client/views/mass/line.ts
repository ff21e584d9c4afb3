import type { Balance } from "../../../shared/book/mass/balance.ts";
import type { Ledger } from "../../../shared/book/mass/ledger.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { LedgerLine, LineAlternative } from "../../../shared/model/ledger.ts";
import { BUILD } from "../../../shared/model/limits.ts";
import { MASS_GROUPS, type MassGroup } from "../../../shared/model/massGroups.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { isGood, type NumberSpec, needed, readNumber } from "../../../shared/units/readNumber.ts";
import { typedText } from "../../../shared/units/shown.ts";
import {
  draftOfMade,
  MADE_SPECS,
  type MadeDraft,
  NOT_MADE,
  type ReadField,
  readMade,
  readPlace,
} from "./madeDraft.ts";

/** A line of the ledger while it is typed. */
export interface LineDraft {
  readonly name: string;
  readonly group: MassGroup;
  readonly quantity: string;
  readonly mass: string;
  readonly uncertainty: string;
  readonly basis: LedgerLine["basis"];
  readonly made: MadeDraft;
  /** what it may be exchanged for, each as typed */
  readonly alternatives: readonly AlternativeDraft[];
}

/** An alternative while it is typed. */
export interface AlternativeDraft {
  readonly name: string;
  readonly mass: string;
  readonly uncertainty: string;
  readonly price: string;
  readonly leadTime: string;
}

/** By field: "mass", "alternatives.0.price". */
export type LineProblems = Readonly<Record<string, string>>;

export const QUANTITY: NumberSpec = { dimension: null, limits: BUILD.ledger.quantity, example: "4" };
export const PIECE_MASS: NumberSpec = {
  dimension: "mass",
  limits: BUILD.ledger.mass,
  example: "2.5 g",
};
export const PIECE_UNCERTAINTY: NumberSpec = {
  dimension: "mass",
  limits: BUILD.ledger.uncertainty,
  example: "0.3 g",
};

export const PIECE_PRICE: NumberSpec = {
  dimension: null,
  limits: BUILD.ledger.alternatives.price,
  example: "4.50",
};
export const LEAD_TIME: NumberSpec = {
  dimension: null,
  limits: BUILD.ledger.alternatives.leadTime,
  example: "7",
};

const MOST_LETTERS = 120;
/** Grams of a stored number, without the rounding of kilograms. */
const asTyped = (kilograms: number) => typedText(kilograms, "mass");

export const EMPTY_LINE: LineDraft = {
  name: "",
  group: "structure",
  quantity: "1",
  mass: "",
  uncertainty: "",
  basis: "estimated",
  made: NOT_MADE,
  alternatives: [],
};

export const EMPTY_ALTERNATIVE: AlternativeDraft = {
  name: "",
  mass: "",
  uncertainty: "",
  price: "",
  leadTime: "",
};

/** @returns a stored line as it would be typed */
export function draftOfLine(line: LedgerLine): LineDraft {
  const { name, group, quantity, mass, uncertainty, basis, alternatives } = line;
  return {
    name,
    group,
    quantity: Number.isInteger(quantity) ? formatFixed(quantity, 0) : String(quantity),
    mass: mass === undefined ? "" : asTyped(mass),
    uncertainty: uncertainty === undefined ? "" : asTyped(uncertainty),
    basis,
    made: draftOfMade(line),
    alternatives: alternatives.map((each) => ({
      name: each.name,
      mass: asTyped(each.mass),
      uncertainty: each.uncertainty === undefined ? "" : asTyped(each.uncertainty),
      price: String(each.price),
      leadTime: String(each.leadTime),
    })),
  };
}

/** @returns the group that a text names */
export const groupOf = (text: string): MassGroup =>
  MASS_GROUPS.find((group) => group === text) ?? "structure";

function nameProblem(name: string, others: readonly { readonly name: string }[]): string | undefined {
  if (name === "") return "A name is needed, for example “Wheel”.";
  if (name.length > MOST_LETTERS) return `Read ${name.length} letters; allowed: up to ${MOST_LETTERS}.`;
  if (others.some((line) => line.name.trim() === name))
    return `“${name}” is there already: change its quantity, or take another name.`;
  return undefined;
}

/** What the fields say, and what is wrong with them. */
class Fields {
  readonly problems: Record<string, string> = {};

  number(path: string, spec: NumberSpec, text: string): number | undefined {
    if (text.trim() === "") return undefined;
    const reading = readNumber(spec, text);
    if (isGood(reading)) return reading.value;
    this.problems[path] = reading.message;
    return undefined;
  }

  needed(path: string, spec: NumberSpec, text: string, label = "The mass"): number | undefined {
    if (text.trim() === "") this.problems[path] = needed(label, spec).message;
    return this.number(path, spec, text);
  }

  /** How a piece is made and where it stands, each under its key, nothing where nothing is typed. */
  made(draft: MadeDraft): Pick<LedgerLine, "made" | "place"> {
    const read: ReadField = (field, isNeeded) =>
      isNeeded
        ? this.needed(field, MADE_SPECS[field], draft[field], "The number")
        : this.number(field, MADE_SPECS[field], draft[field]);
    const [made, place] = [readMade(draft, read), readPlace(draft, read)];
    return { ...(made ? { made } : {}), ...(place ? { place } : {}) };
  }

  name(path: string, text: string, others: readonly { readonly name: string }[]): string {
    const name = text.trim();
    const problem = nameProblem(name, others);
    if (problem !== undefined) this.problems[path] = problem;
    return name;
  }

  /** @returns an uncertainty under its key, nothing where none is typed */
  unsure(path: string, text: string): { readonly uncertainty?: number } {
    const uncertainty = this.number(path, PIECE_UNCERTAINTY, text);
    return uncertainty === undefined ? {} : { uncertainty };
  }

  alternative(
    draft: AlternativeDraft,
    i: number,
    others: readonly { readonly name: string }[],
  ): LineAlternative {
    const at = `alternatives.${i}`;
    return {
      name: this.name(`${at}.name`, draft.name, others),
      mass: this.needed(`${at}.mass`, PIECE_MASS, draft.mass) ?? 0,
      ...this.unsure(`${at}.uncertainty`, draft.uncertainty),
      price: this.number(`${at}.price`, PIECE_PRICE, draft.price) ?? 0,
      leadTime: this.number(`${at}.leadTime`, LEAD_TIME, draft.leadTime) ?? 0,
    };
  }
}

/** @returns a typed line, or what is wrong with it, field by field */
export function readLine(
  draft: LineDraft,
  others: readonly LedgerLine[],
): { readonly line: LedgerLine } | { readonly problems: LineProblems } {
  const fields = new Fields();
  const mass =
    draft.made.by === ""
      ? fields.needed("mass", PIECE_MASS, draft.mass)
      : fields.number("mass", PIECE_MASS, draft.mass);
  const line: LedgerLine = {
    name: fields.name("name", draft.name, others),
    group: draft.group,
    quantity: fields.number("quantity", QUANTITY, draft.quantity) ?? 1,
    ...(mass === undefined ? {} : { mass }),
    ...fields.unsure("uncertainty", draft.uncertainty),
    basis: draft.basis,
    ...fields.made(draft.made),
    alternatives: draft.alternatives.map((each, i, all) =>
      fields.alternative(each, i, [{ name: draft.name.trim() }, ...all.slice(0, i)]),
    ),
  };
  return Object.keys(fields.problems).length > 0 ? { problems: fields.problems } : { line };
}

/** @returns the build with a line in the place of another; null: behind the last */
export function withLine(build: Build, line: LedgerLine, at: number | null): Build {
  const { ledger } = build;
  return {
    ...build,
    ledger: at === null ? [...ledger, line] : ledger.map((each, i) => (i === at ? line : each)),
  };
}

const UNBOOKED = "On no line before";

/** @returns the build with what its lines leave of the whole as a line of its own, known as well as the whole and the lines are; where all others have a place it stands at their centre */
export function withBooked(
  build: Build,
  ledger: Pick<Ledger, "unaccounted" | "whole" | "sum">,
  balance: Balance,
): Build {
  const { unaccounted, whole, sum } = ledger;
  if (unaccounted === null || whole === null || unaccounted <= 0) return build;
  const names = build.ledger.map(({ name }) => name);
  const name = names.includes(UNBOOKED) ? `${UNBOOKED}, ${names.length + 1}` : UNBOOKED;
  const line: LedgerLine = {
    name,
    group: "structure",
    quantity: 1,
    mass: unaccounted,
    uncertainty: Math.hypot(whole.uncertainty, sum.uncertainty),
    basis: "estimated",
    ...(balance.isWhole && balance.centre ? { place: balance.centre } : {}),
    alternatives: [],
  };
  return withLine(build, line, null);
}

/** @returns the build without a line */
export function withoutLine(build: Build, at: number): Build {
  return { ...build, ledger: build.ledger.filter((_, i) => i !== at) };
}
