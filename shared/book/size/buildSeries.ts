import type { WantedHold } from "../../decide/size/input.ts";
import type { SizeRow } from "../../decide/size/row.ts";
import type { Build } from "../../model/build.ts";
import { NotEnoughDataError, OutOfRangeError } from "../../numeric/errors.ts";
import { type Book, findById } from "../book.ts";
import { bookOfBuild } from "../bookOfBuild.ts";
import { diametersOf } from "./diameters.ts";
import { allowedBy, familySizes } from "./familySizes.ts";
import { familySpread } from "./familySpread.ts";
import { type PrintSeries, printSeries } from "./printSeries.ts";
import { sideOf } from "./sides.ts";
import { spreadAsked } from "./spreadAsked.ts";
import { usualRange, usualVoltage } from "./usual.ts";

/** What of a build's question is asked otherwise than Size first asks it. */
export interface SeriesQuestion {
  /** family, by identifier; the build's own unless given */
  readonly rotor?: string;
  readonly hold: WantedHold;
  /** ends of the sizes that are looked at [m] */
  readonly from?: number;
  readonly to?: number;
}

/** What to print and test next for a build, and the size that it is about. */
export interface BuildSeries extends PrintSeries {
  readonly rotor: string;
  /** of least watts among those that keep every limit; null: none does */
  readonly least: SizeRow | null;
}

function sizesBetween(
  book: Book,
  build: Build,
  kind: "ducted" | "propeller",
  asked: SeriesQuestion,
): number[] {
  const usual = usualRange(book, build, kind);
  const { from = usual.from, to = usual.to } = asked;
  const diameters = diametersOf({ from, to });
  if (diameters.length === 0) throw new OutOfRangeError("to", to, `above ${from}, where the sizes begin`);
  return diameters;
}

/**
 * What to print and test next for a stored build: as the view Size says it of a family.
 *
 *     sizes, their uncertainty, then {@link printSeries}
 *
 * @param book - the whole bench book
 * @param build - whose need it is, its motor as strong as the one wanted
 * @param asked - family, attitude and margin, sizes [m]
 * @returns the series, and the best size now
 * @throws {NotEnoughDataError} on a family that can't be sized, with what it lacks
 * @throws {OutOfRangeError} on sizes whose ends are reversed, an attitude that needs nothing
 */
export function buildSeries(book: Book, build: Build, asked: SeriesQuestion): BuildSeries {
  const { rotor = build.rotor, hold } = asked;
  const stored = findById(book.rotors, rotor)?.data;
  if (!stored)
    throw new NotEnoughDataError(
      `The book has no rotor ${rotor}.`,
      "Name a rotor or propeller of it.",
      "rotor",
    );
  const { kind } = stored;
  const own = { ...build, rotor };
  const side = sideOf(book, own, kind, { motor: build.motor, cellVoltage: usualVoltage(book, build) });
  const family = side?.families.find(({ id }) => id === rotor);
  if (!side || !family) {
    const why = side?.leftOut.find(({ name }) => name === stored.name)?.why;
    throw new NotEnoughDataError(
      `${stored.name} can't be sized on this build${why ? `: ${why}` : "."}`,
      "Log the tests of its parts, or name another family.",
      "rotor",
    );
  }
  const need = { hold, allows: allowedBy(book, side, build.motor), cell: side.run.pack.cell };
  const sizes = familySizes(need, side.numbers, family, sizesBetween(book, build, kind, asked));
  const of = {
    book: bookOfBuild(book, { ...side.build, rotor }),
    side: { kind, build: side.build, numbers: side.numbers },
    family: rotor,
    hold,
  };
  const best = familySpread(spreadAsked(of, sizes))?.best ?? null;
  const least = sizes.least === null ? null : sizes.rows[sizes.least];
  const none = { known: null, prints: [], together: null };
  return { rotor, least, ...(best ? printSeries({ ...of, rows: sizes.rows, best }) : none) };
}
