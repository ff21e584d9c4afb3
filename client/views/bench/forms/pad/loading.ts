import { type TypedQuantity, toSI } from "../../../../../shared/units/quantity.ts";
import { isGood, type NumberSpec, type Reading, readNumber } from "../../../../../shared/units/readNumber.ts";
import { type Draft, type DraftRow, isBlankRow, withNewRow, withRow } from "../../record/draft.ts";
import { quantityText } from "../../record/numbers.ts";

/** What a load did: the pull goes on, or is over. */
export type Outcome = "held" | "letGo";

/** The pull that is being loaded. */
export interface Loading {
  /** from 1 */
  readonly number: number;
  /** its row; null where it begins with the next load */
  readonly row: DraftRow | null;
  /** loads that held so far, as typed; null before the first */
  readonly held: TypedQuantity | null;
}

/** A number that repeated sums of decimals leave, without their last digits. */
const EXACT = 12;

/** @returns the sum of two typed quantities in the first one's unit */
export function sum(a: TypedQuantity | null, b: TypedQuantity): TypedQuantity {
  if (!a) return b;
  const inUnit = a.unit === b.unit ? b.value : toSI(b, "load") / toSI({ value: 1, unit: a.unit }, "load");
  return { value: Number((a.value + inUnit).toPrecision(EXACT)), unit: a.unit };
}

function typed(spec: NumberSpec, text: string): TypedQuantity | null {
  const reading = text.trim() === "" ? null : readNumber(spec, text);
  return reading && isGood(reading) ? reading.typed : null;
}

/** @returns the pull that the next load belongs to: the last one until it let go, then another */
export function loadingOf(draft: Draft, spec: NumberSpec, carried: ReadonlySet<string>): Loading {
  const last = draft.rows.at(-1);
  const next = { number: draft.rows.length + 1, row: null, held: null };
  if (!last || last.aside !== null) return next;
  if (isBlankRow(last, carried)) return { number: draft.rows.length, row: last, held: null };
  if ((last.cells.letGo ?? "").trim() !== "") return next;
  return { number: draft.rows.length, row: last, held: typed(spec, last.cells.held ?? "") };
}

/** @returns the load on the rig once one more is added; what is wrong with the text where it can't be read */
export function loadAfter(loading: Loading, spec: NumberSpec, step: string): Reading<TypedQuantity> {
  const reading = readNumber(spec, step);
  if (!isGood(reading)) return reading;
  if (!(reading.value > 0))
    return { message: "An added load is more than 0. Take the last one back instead." };
  return sum(loading.held, reading.typed);
}

/** @returns the draft once the rig with one more load held or let go */
export function withLoad(
  draft: Draft,
  loading: Loading,
  load: TypedQuantity,
  outcome: Outcome,
  carried: ReadonlySet<string>,
): Draft {
  const whole = loading.row ? draft : withNewRow(draft, carried);
  const { key } = loading.row ?? whole.rows[whole.rows.length - 1];
  const nothing = { value: 0, unit: load.unit };
  const cells: Record<string, string> =
    outcome === "held"
      ? { held: quantityText(load) }
      : { held: quantityText(loading.held ?? nothing), letGo: quantityText(load) };
  return withRow(whole, key, (row) => ({ ...row, cells: { ...row.cells, ...cells } }));
}
