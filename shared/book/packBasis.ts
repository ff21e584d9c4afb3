import { type DischargeFit, fitDischarge, resistanceCurveOf } from "../fit/dischargeFit.ts";
import type { Pack } from "../model/parts/pack.ts";
import type { DischargeTest } from "../model/tests/discharge.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { DEFAULT_WEATHER } from "../physics/air.ts";
import { CHEMISTRY_TABLES, type ChemistryTable } from "../physics/cells/table.ts";
import type { Note } from "../physics/note.ts";
import type { CellInput } from "../physics/rundown.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, findById, oncePerBook, testsOf } from "./book.ts";
import type { Missing } from "./missing.ts";
import { dischargeReadings } from "./readings/discharge.ts";
import { inUse } from "./readings/reading.ts";

/** A pack's cell in numbers, and what its open-circuit curve rests on. */
export interface PackBasis {
  /** discharge tests of this pack, the pack's own stated curve, or its chemistry's published one */
  readonly basis: "measured" | "stated" | "chemistry";
  /** resistance and capacity from the tests where they tell them, else as the pack states them */
  readonly cell: CellInput;
  /** null without a discharge test that makes one, and where the curve came without its tests */
  readonly fit: DischargeFit | null;
  /** whether a discharge test emptied a cell, or its capacity is the stated one; null without a fit */
  readonly capacityFrom: DischargeFit["capacityFrom"] | null;
  /** R(0 °C)/R(20 °C) of the cell; null: not stated [-] */
  readonly coldFactor: number | null;
  /** at which the resistance was told: the mean of the discharge tests' air, else 20 °C [K] */
  readonly toldAt: number;
  /** what the cell's resistance is multiplied by in the build's cold already [-] */
  readonly rise: number;
  /** the published curve in use, with its source; null where it isn't */
  readonly chemistry: ChemistryTable | null;
  /** tests that the curve rests on */
  readonly testIds: readonly string[];
  /** why tests are logged and yet not used; what the fit says */
  readonly notes: readonly Note[];
}

export type PackAnswer = PackBasis | { readonly basis: "missing"; readonly missing: Missing };

interface Tested {
  readonly fit: DischargeFit | null;
  /** [K] */
  readonly toldAt: number;
  readonly testIds: readonly string[];
  readonly notes: readonly Note[];
}

const { temperature: ROOM } = DEFAULT_WEATHER;
const NOT_TESTED: Tested = { fit: null, toldAt: ROOM, testIds: [], notes: [] };

/** Mean air of the tests, 20 °C where none was read [K]. */
function airOf(tests: readonly { readonly data: DischargeTest }[]): number {
  const read = tests.map(({ data }) => (data.air ? toSI(data.air.temperature, "temperature") : ROOM));
  return read.reduce((sum, each) => sum + each, 0) / read.length;
}

function tested(book: Book, packId: string, pack: Pack): Tested {
  const tests = testsOf(book, "discharge").filter(({ data }) => data.pack === packId);
  const runs = tests.flatMap(({ data }) => {
    const readings = inUse(dischargeReadings(data, pack));
    return readings.length > 0 ? [{ readings, emptied: data.end === "empty" }] : [];
  });
  if (runs.length === 0) return NOT_TESTED;
  const { resistance: knownResistance, capacity: knownCapacity } = pack.cell;
  try {
    const fit = fitDischarge({ runs, knownResistance, knownCapacity });
    // A resistance that the readings don't tell is the stated one, at 20 °C.
    const toldAt = fit.resistanceFrom === "known" ? ROOM : airOf(tests);
    return { fit, toldAt, testIds: tests.map(({ id }) => id), notes: fit.warnings };
  } catch (error) {
    if (!(error instanceof NotEnoughDataError)) throw error;
    const message = `The discharge tests don't give the pack's curve: ${error.message}`;
    return { ...NOT_TESTED, notes: [{ code: "discharge-not-enough", message }] };
  }
}

function measuredCell(pack: Pack, fit: DischargeFit): CellInput {
  const { curve: _stated, chemistry: _kind, coldFactor: _rise, ...cell } = pack.cell;
  const { resistance, capacity, curve } = fit;
  return { ...cell, resistance, resistanceCurve: resistanceCurveOf(fit), capacity, curve };
}

/** @returns under which key a book has a pack's cell */
export const packKey = (id: string): string => `pack ${id}`;

function answerFor(book: Book, packId: string): PackAnswer | null {
  const pack = findById(book.packs, packId)?.data;
  if (!pack) return null;
  const { fit, toldAt, testIds, notes } = tested(book, packId, pack);
  const { chemistry, curve, coldFactor = null, ...cell } = pack.cell;
  const capacityFrom = fit?.capacityFrom ?? null;
  const told = { coldFactor, capacityFrom, toldAt, rise: 1, testIds, notes };
  if (fit) return { basis: "measured", cell: measuredCell(pack, fit), fit, chemistry: null, ...told };
  if (curve) return { basis: "stated", cell: { ...cell, curve }, fit: null, chemistry: null, ...told };
  if (chemistry) {
    const table: ChemistryTable = CHEMISTRY_TABLES[chemistry];
    return {
      basis: "chemistry",
      cell: { ...cell, curve: table.curve },
      fit: null,
      chemistry: table,
      ...told,
    };
  }
  const lacking = notes.map(({ message }) => ` ${message}`).join("");
  const message = `The pack's voltage by charge is not known: log a discharge test, or name its chemistry on the pack's page.${lacking}`;
  return { basis: "missing", missing: { path: "pack.cell.curve", message, test: "discharge" } };
}

/**
 * What is known of a pack's cell: by its discharge tests, else its stated curve, else its chemistry's published one.
 *
 * @param book - the whole bench book
 * @param packId - of a stored pack
 * @returns the cell in SI and what it rests on; what is missing where there is none of the three; null where the book has no such pack
 * @throws {OutOfRangeError} on a number in the book that can't be
 *
 * Valid for packs of like cells. Source: docs/method/fits/discharge.md
 */
export function packBasis(book: Book, packId: string): PackAnswer | null {
  return oncePerBook(book, packKey(packId), () => answerFor(book, packId));
}
