import type { Build } from "../../model/build.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, type StoredTest, testsOf } from "../book.ts";
import { weighedMass } from "../weighed.ts";
import { ledgerOf, type MassLine } from "./ledger.ts";

/** A line of a build's masses that a scale says otherwise of. */
export interface WeighedLine {
  readonly line: MassLine;
  /** of one piece, by the newest weigh-in of it [kg] */
  readonly mass: number;
  /** standard [kg]; null where one reading without an instrument says nothing of it */
  readonly uncertainty: number | null;
  /** day, YYYY-MM-DD */
  readonly date: string;
}

type WeighIn = StoredTest<"weigh-in">;

/** Masses that differ by less than this share are the same number, rounded [-]. */
const SAME = 1e-6;
const SAME_DIAMETER = 1e-6;

const inWords = (text: string): string => text.trim().toLowerCase();

function isOfRotor(data: WeighIn["data"], { diameter }: Build): boolean {
  if (data.diameter === undefined) return true;
  return Math.abs(toSI(data.diameter, "length") - diameter) <= SAME_DIAMETER * diameter;
}

/** A part alone, or what the test calls by the line's own name. */
function isOf({ data }: WeighIn, build: Build, { of, name }: MassLine): boolean {
  if (data.struckOut !== undefined || data.weighed !== "part") return false;
  if (typeof of === "number") return inWords(data.what) === inWords(name);
  return data[of] === build[of] && (of !== "rotor" || isOfRotor(data, build));
}

/** @returns the weigh-ins of one piece of a line that are in use, the newest first */
export function weighInsOf(book: Book, build: Build, line: MassLine): WeighIn[] {
  return testsOf(book, "weigh-in")
    .filter((test) => isOf(test, build, line))
    .sort((a, b) => (a.data.date < b.data.date ? 1 : -1));
}

/**
 * The lines of a build that a weigh-in says another mass of, or that are known by no scale although one stood on it.
 *
 *     newest weigh-in of the part, or of one piece under the line's name
 *
 * @param book - of its parts and tests
 * @param build - as it is stored
 * @returns the lines with what the scale said [kg]
 *
 * Valid for weigh-ins of one piece. Source: docs/method/mass.md, Ledger
 */
export function weighedLines(book: Book, build: Build): WeighedLine[] {
  return ledgerOf(book, build).lines.flatMap((line) => {
    const [newest] = weighInsOf(book, build, line);
    const weighed = newest && answerOrNull(() => weighedMass(newest.data));
    if (!weighed) return [];
    const { mass, uncertainty } = weighed;
    const isKnown = line.basis === "weighed" && Math.abs(mass - line.mass) <= SAME * mass;
    return isKnown ? [] : [{ line, mass, uncertainty, date: newest.data.date }];
  });
}

/** @returns the build with a line of its own ledger as the scale said */
export function withWeighed(build: Build, { line: { of }, mass, uncertainty }: WeighedLine): Build {
  const ledger = build.ledger.map((line, at) => {
    if (at !== of) return line;
    const { uncertainty: _before, ...kept } = line;
    const known = uncertainty === null ? {} : { uncertainty };
    return { ...kept, mass, ...known, basis: "weighed" as const };
  });
  return { ...build, ledger };
}
