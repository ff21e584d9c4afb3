import { LITHIUM_ION } from "./lithiumIon.ts";
import { LITHIUM_IRON_PHOSPHATE } from "./lithiumIronPhosphate.ts";

/** What a kind of cell is known to do, where a pack's own cells were not tested. */
export interface ChemistryTable {
  /** as a sentence says it */
  readonly name: string;
  /** open-circuit, by rising charge, from 0 to 1 [-, V] */
  readonly curve: readonly (readonly [number, number])[];
  /** who measured it, and how */
  readonly source: string;
  readonly licence: string;
  /** how far other cells of the kind may lie from it */
  readonly caveat: string;
}

const MEASURED =
  "Sunil, Pattipati and Balasingam, IEEE Transactions on Instrumentation and Measurement (2025): their open data set, measured at room temperature";

/** Published open-circuit curves; a chemistry without a published curve under an open licence is left out. */
export const CHEMISTRY_TABLES = {
  "lithium-ion": {
    name: "lithium-ion cells, full at 4.2 V",
    curve: LITHIUM_ION,
    source: `${MEASURED} at a twentieth of the capacity an hour; one cell of 18650 size`,
    licence: "MIT",
    // Against the two 21700 cells of the same data set, read at each hundredth of charge.
    caveat:
      "Two larger cells of the same study lie within 0.05 V of it above a tenth of the charge, within 0.21 V below. Lithium polymer packs are of this family; none was in the study.",
  },
  "lithium-iron-phosphate": {
    name: "lithium iron phosphate cells, full at 3.6 V",
    curve: LITHIUM_IRON_PHOSPHATE,
    source: `${MEASURED} at a thirty-second of the capacity an hour; one cell of 18650 size`,
    licence: "MIT",
    caveat: "One cell was measured; how far others lie from it is not known.",
  },
} as const satisfies Readonly<Record<string, ChemistryTable>>;
