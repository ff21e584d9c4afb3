import { BUILD } from "../../../shared/model/limits.ts";
import type {
  PartDimension,
  SizeBasis,
  StackKind,
  StoredPart,
  StoredStack,
} from "../../../shared/model/stacks.ts";
import { exampleOf, isGood, type NumberSpec, needed, readNumber } from "../../../shared/units/readNumber.ts";
import { typedText } from "../../../shared/units/shown.ts";

/** A size of a stack while it is typed. */
export interface LineDraft {
  readonly name: string;
  /** the size of a part; "": its own */
  readonly of: PartDimension | "";
  readonly nominal: string;
  readonly tolerance: string;
  readonly basis: SizeBasis;
  readonly quantity: string;
}

/** A stack while it is typed: the space first, then the parts. */
export interface StackDraft {
  readonly name: string;
  readonly kind: StackKind;
  readonly lines: readonly LineDraft[];
}

/** By field: "name", "lines.1.nominal". */
export type StackProblems = Readonly<Record<string, string>>;

const { space, parts } = BUILD.stacks;
export const SIZE: NumberSpec = { dimension: "length", limits: space.nominal, example: "24 mm" };
export const TOLERANCE: NumberSpec = {
  dimension: "length",
  limits: space.tolerance,
  example: "0.2 mm",
};
export const PIECES: NumberSpec = { dimension: null, limits: parts.quantity, example: "1" };

const MOST_LETTERS = 120;
const asTyped = (metres: number | undefined) => (metres === undefined ? "" : typedText(metres, "length"));

export const EMPTY_LINE: LineDraft = {
  name: "",
  of: "",
  nominal: "",
  tolerance: "",
  basis: "drawn",
  quantity: "1",
};
const line = (name: string, more: Partial<LineDraft> = {}): LineDraft => ({ ...EMPTY_LINE, name, ...more });
const ofPart = (name: string, of: PartDimension) => line(name, { of });
const free = (name: string, more: Partial<LineDraft>) => line(name, { basis: "free", ...more });

/** What a stack of each kind is usually made of; sizes of parts are filled in from the book. */
const USUAL: Readonly<Record<StackKind, readonly LineDraft[]>> = {
  height: [
    line("Cover, inside height"),
    ofPart("Motor", "motor.length"),
    ofPart("Rotor", "rotor.height"),
    free("Air over the rotor", { nominal: "1 mm" }),
  ],
  pocket: [line("Motor pocket, bore"), ofPart("Motor", "motor.diameter")],
  casing: [
    line("Casing, inside height"),
    free("Room under the rotor", { nominal: "0.5 mm" }),
    ofPart("Rotor", "rotor.height"),
    free("Room over the rotor", { nominal: "0.5 mm" }),
  ],
  tip: [
    line("Casing, bore"),
    ofPart("Rotor", "rotor.diameter"),
    free("Room that the tips need, both sides", { nominal: "0.4 mm" }),
  ],
  inlet: [
    line("From the rotor's inlet to what it faces"),
    free("Air before the inlet", { of: "rotor.inletAir" }),
  ],
  gap: [
    ofPart("Wheel, radius", "gear.wheelRadius"),
    ofPart("Tyre, gives", "gear.sag"),
    line("Axle over the lip's edge"),
  ],
  other: [line("From face to face"), line("")],
};

/** @returns a stack of a kind as it is first offered */
export const usualStack = (kind: StackKind, name: string): StackDraft => ({
  name,
  kind,
  lines: USUAL[kind].map((each) => ({
    ...each,
    nominal: each.nominal === "" ? "" : exampleOf({ ...SIZE, example: each.nominal }),
  })),
});

const draftOfLine = ({ name, of, nominal, tolerance, basis, quantity }: StoredPart): LineDraft => ({
  name,
  of: of ?? "",
  nominal: asTyped(nominal),
  tolerance: asTyped(tolerance),
  basis,
  quantity: String(quantity),
});

/** @returns a stored stack as it would be typed */
export function draftOfStack({ name, kind, space: faces, parts: filling }: StoredStack): StackDraft {
  return { name, kind, lines: [{ ...faces, quantity: 1 }, ...filling].map(draftOfLine) };
}

function nameProblem(name: string, others: readonly string[]): string | null {
  if (name === "") return "A name is needed, for example “Cover, inside height”.";
  if (name.length > MOST_LETTERS) return `Read ${name.length} letters; allowed: up to ${MOST_LETTERS}.`;
  return others.includes(name) ? `“${name}” is there already: take another name.` : null;
}

/** What the fields say, and what is wrong with them. */
class Fields {
  readonly problems: Record<string, string> = {};

  name(path: string, text: string, others: readonly string[]): string {
    const problem = nameProblem(text.trim(), others);
    if (problem !== null) this.problems[path] = problem;
    return text.trim();
  }

  number(path: string, spec: NumberSpec, text: string): number | undefined {
    if (text.trim() === "") return undefined;
    const reading = readNumber(spec, text);
    if (isGood(reading)) return reading.value;
    this.problems[path] = reading.message;
    return undefined;
  }

  size(at: string, { of, nominal, tolerance }: LineDraft): Pick<StoredPart, "of" | "nominal" | "tolerance"> {
    if (of === "" && nominal.trim() === "") this.problems[`${at}.nominal`] = needed("The size", SIZE).message;
    const own = of === "" ? this.number(`${at}.nominal`, SIZE, nominal) : undefined;
    const half = this.number(`${at}.tolerance`, TOLERANCE, tolerance);
    if (own !== undefined && half !== undefined && half > own)
      this.problems[`${at}.tolerance`] = `Read ${tolerance}; allowed: no more than the size, ${nominal}.`;
    return {
      ...(of === "" ? {} : { of }),
      ...(own === undefined ? {} : { nominal: own }),
      ...(half === undefined ? {} : { tolerance: half }),
    };
  }

  line(draft: LineDraft, i: number, all: readonly LineDraft[]): StoredPart {
    const at = `lines.${i}`;
    const before = all.slice(0, i);
    const size = this.size(at, draft);
    if (draft.of !== "" && before.some(({ of }) => of === draft.of))
      this.problems[`${at}.of`] = "This stack has it already: change how many pieces there are.";
    return {
      name: this.name(
        `${at}.name`,
        draft.name,
        before.slice(1).map(({ name }) => name.trim()),
      ),
      ...size,
      basis: draft.basis,
      quantity: this.number(`${at}.quantity`, PIECES, draft.quantity) ?? 1,
    };
  }
}

/** @returns a typed stack, or what is wrong with it, field by field */
export function readStack(
  draft: StackDraft,
  others: readonly StoredStack[],
): { readonly stack: StoredStack } | { readonly problems: StackProblems } {
  const fields = new Fields();
  const name = fields.name(
    "name",
    draft.name,
    others.map((each) => each.name),
  );
  const [{ quantity: _one, ...faces }, ...filling] = draft.lines.map((each, i, all) =>
    fields.line(each, i, all),
  );
  if (filling.length === 0) fields.problems.lines = "Nothing stands between the faces: add a part.";
  if (Object.keys(fields.problems).length > 0) return { problems: fields.problems };
  return { stack: { name, kind: draft.kind, space: faces, parts: filling } };
}
