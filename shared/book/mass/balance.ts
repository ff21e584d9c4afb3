import type { Build } from "../../model/build.ts";
import type { Place } from "../../model/ledger.ts";
import type { Book } from "../book.ts";
import { ledgerOf, type MassLine } from "./ledger.ts";

/** A line of the ledger with its place. */
export interface PlacedLine {
  readonly name: string;
  /** of all its pieces [kg] */
  readonly mass: number;
  /** null: not said */
  readonly place: Place | null;
}

/** Where a build's masses stand. */
export interface Balance {
  readonly lines: readonly PlacedLine[];
  /** of the lines that have a place [m]; null: none has */
  readonly centre: Place | null;
  /** every line that weighs something has a place: the centre counts in the place of the numbers typed */
  readonly isWhole: boolean;
}

function placeOf({ ledger, places }: Build, { of }: MassLine): Place | null {
  if (typeof of === "number") return ledger[of].place ?? null;
  const { rotor, motor, pack, skirt } = places;
  return { rotor, motor, pack, skirt }[of] ?? null;
}

/** Mean of the places, by mass. */
function centreOf(lines: readonly PlacedLine[]): Place | null {
  let [total, fromRear, height] = [0, 0, 0];
  for (const { mass, place } of lines) {
    if (place === null) continue;
    total += mass;
    fromRear += mass * place.fromRear;
    height += mass * place.height;
  }
  return total > 0 ? { fromRear: fromRear / total, height: height / total } : null;
}

/**
 * The centre of gravity of a build from the places of its parts and lines.
 *
 *     x = Σ m·x_i/Σ m, h = Σ m·h_i/Σ m over the lines with a place
 *
 * @param book - of its parts
 * @param build - a stored build, or one changed by what-if settings
 * @returns every line that weighs something, and the centre [m]
 *
 * Valid for lines small beside their distances; mass on no line is taken to stand at the centre of the others. Source: definition; docs/method/mass.md, Balance
 */
export function balanceOf(book: Book, build: Build): Balance {
  const lines = ledgerOf(book, build)
    .lines.filter(({ mass }) => mass > 0)
    .map(
      (line): PlacedLine => ({
        name: line.name,
        mass: line.quantity * line.mass,
        place: placeOf(build, line),
      }),
    );
  return {
    lines,
    centre: centreOf(lines),
    isWhole: lines.length > 0 && lines.every(({ place }) => place !== null),
  };
}
