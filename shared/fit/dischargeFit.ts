import { NotEnoughDataError, requireFinite, requireNonNegative, requirePositive } from "../numeric/errors.ts";
import { cellResistance } from "../physics/cells/cell.ts";
import type { Note } from "../physics/note.ts";
import { openCircuitCurve } from "../physics/pack.ts";
import { formatDigits } from "../units/format.ts";
import { type CurvePoints, openCircuitPoints } from "./dischargeCurve.ts";
import { toldResistance } from "./dischargeResistance.ts";
import { type CellReading, type Step, stepsAcross, stepsWithin } from "./dischargeSteps.ts";
import { type ResistanceAt, resistanceByCharge } from "./resistanceByCharge.ts";

/** One reading of a discharge, of one cell. */
export interface DischargeReading {
  /** since full [C] */
  readonly drawn: number;
  /** [V] */
  readonly voltage: number;
  /** 0 at rest [A] */
  readonly current: number;
}

/** One discharge from full. */
export interface DischargeRun {
  readonly readings: readonly DischargeReading[];
  /** drawn until the loaded cell reached its minimum */
  readonly emptied: boolean;
}

export interface DischargeRequest {
  readonly runs: readonly DischargeRun[];
  /** of one cell, from elsewhere: used where the readings can't tell it [Ω]; null where it isn't known */
  readonly knownResistance: number | null;
  /** of one cell, for a discharge that was stopped before [C]; null where it isn't known */
  readonly knownCapacity: number | null;
}

export interface DischargeFit {
  /** open-circuit, by rising charge, from 0 to 1 [-, V] */
  readonly curve: CurvePoints;
  /** R of one cell [Ω] */
  readonly resistance: number;
  /** [Ω]; null where R is not from the readings */
  readonly resistanceError: number | null;
  /** rests among the readings, several currents, discharges at different currents, or not from the readings at all */
  readonly resistanceFrom: "rests" | "currents" | "discharges" | "known";
  /** R by rising charge, where the readings show that it varies; null: one for all charges */
  readonly resistanceByCharge: readonly ResistanceAt[] | null;
  /** of one cell [C] */
  readonly capacity: number;
  readonly capacityFrom: "emptied" | "known";
  /** scatter of the readings about curve and sag; null where R is not from them [V] */
  readonly residualSd: number | null;
  /** by run and reading: charge [-], voltage less what the fit says [V] */
  readonly residuals: readonly (readonly { readonly charge: number; readonly voltage: number }[])[];
  readonly warnings: readonly Note[];
}

/** A current below this share of the largest is a rest [-]. Judgement. */
const REST = 0.01;

function checkRun({ readings }: DischargeRun, path: string): void {
  readings.forEach(({ drawn, voltage, current }, i) => {
    requireNonNegative(`${path}.readings.${i}.drawn`, drawn);
    requirePositive(`${path}.readings.${i}.voltage`, requireFinite(`${path}.readings.${i}.voltage`, voltage));
    requireNonNegative(`${path}.readings.${i}.current`, current);
  });
}

const drawnIn = ({ readings }: DischargeRun): number =>
  readings.reduce((most, { drawn }) => Math.max(most, drawn), 0);

function capacityOf({
  runs,
  knownCapacity,
}: DischargeRequest): Pick<DischargeFit, "capacity" | "capacityFrom"> {
  const whole = runs.filter(({ emptied }) => emptied).map(drawnIn);
  if (whole.length > 0 && !whole.some((drawn) => drawn > 0))
    throw new NotEnoughDataError(
      "No charge was drawn yet.",
      "Draw on and read voltage and current at ten or more charges between full and empty.",
      "runs",
    );
  if (whole.length > 0)
    return {
      capacity: whole.reduce((sum, drawn) => sum + drawn, 0) / whole.length,
      capacityFrom: "emptied",
    };
  if (knownCapacity === null)
    throw new NotEnoughDataError(
      "No discharge went to empty, so the capacity isn't known.",
      "Draw on, attended, until the loaded cell reaches its maker's minimum.",
      "runs",
    );
  return { capacity: requirePositive("knownCapacity", knownCapacity), capacityFrom: "known" };
}

/** @returns the charge that counts as the whole in a run [C]: what it gave where it went to empty, else the capacity; one for all where discharges at different currents stand side by side */
export function wholeOf(
  run: DischargeRun,
  { capacity, resistanceFrom }: Pick<DischargeFit, "capacity" | "resistanceFrom">,
): number {
  const own = run.emptied && resistanceFrom !== "discharges";
  return own ? drawnIn(run) : Math.max(capacity, drawnIn(run));
}

type Sag = Pick<
  DischargeFit,
  "resistance" | "resistanceError" | "resistanceFrom" | "resistanceByCharge" | "residualSd" | "warnings"
>;

function chargesOf(
  { runs }: DischargeRequest,
  capacity: number,
  resistanceFrom: Sag["resistanceFrom"],
): CellReading[][] {
  return runs.map((run) => {
    const whole = wholeOf(run, { capacity, resistanceFrom });
    return run.readings.map(({ drawn, voltage, current }) => ({
      charge: 1 - drawn / whole,
      voltage,
      current,
    }));
  });
}

function toldBy(
  steps: readonly Step[],
  count: number,
  resistanceFrom: Exclude<Sag["resistanceFrom"], "known">,
): Sag | null {
  const told = toldResistance(steps, count);
  return (
    told && {
      resistance: told.resistance,
      resistanceError: told.standardError,
      resistanceFrom,
      resistanceByCharge: resistanceByCharge(steps, count),
      residualSd: told.residualSd,
      warnings: [],
    }
  );
}

const untold = (resistance: number): Omit<Sag, "warnings"> => ({
  resistance,
  resistanceError: null,
  resistanceFrom: "known",
  resistanceByCharge: null,
  residualSd: null,
});

function knownSag(readings: readonly CellReading[], known: number | null): Sag {
  const need =
    "Rest for a minute now and then, current 0, and read the voltage before and after; or read at two currents in turn; or log a second discharge at half or twice the current.";
  if (readings.every(({ current }) => current === 0)) return { ...untold(known ?? 0), warnings: [] };
  if (known === null)
    throw new NotEnoughDataError(
      "The cell's resistance and its open-circuit voltage can't be measured separately from these readings.",
      need,
      "runs",
    );
  const message = `The readings can't tell the cell's resistance from its open-circuit voltage; ${formatDigits(1000 * known, 3)} mΩ a cell is taken as the pack states it. ${need}`;
  return {
    ...untold(requireNonNegative("knownResistance", known)),
    warnings: [{ code: "resistance-not-told", message }],
  };
}

/** Readings at their charges, and how the cell sags. */
interface Told {
  readonly sag: Sag;
  /** [C] */
  readonly capacity: number;
  readonly byRun: readonly (readonly CellReading[])[];
}

/** Discharges at different currents beside each other, each by the charge that it has drawn of the gentlest one's. */
function toldAcross(request: DischargeRequest, count: number, mean: number): Told | null {
  if (request.runs.length < 2) return null;
  const capacity = request.runs.reduce((most, run) => Math.max(most, drawnIn(run)), mean);
  const byRun = chargesOf(request, capacity, "discharges");
  const sag = toldBy(stepsAcross(byRun), count, "discharges");
  return sag && { sag, capacity, byRun };
}

function toldOf(request: DischargeRequest, capacity: number): Told {
  const byRun = chargesOf(request, capacity, "known");
  const readings = byRun.flat();
  const most = readings.reduce((largest, { current }) => Math.max(largest, current), 0);
  const rests = readings.some(({ current }) => current <= REST * most);
  const own = toldBy(stepsWithin(byRun), readings.length, rests ? "rests" : "currents");
  if (own) return { sag: own, capacity, byRun };
  return (
    toldAcross(request, readings.length, capacity) ?? {
      sag: knownSag(readings, request.knownResistance),
      capacity,
      byRun,
    }
  );
}

/** @returns the curve of a fit's resistance by charge, as a cell has it; null where one stands for all charges [-, Ω] */
export function resistanceCurveOf({ resistanceByCharge: by }: Pick<DischargeFit, "resistanceByCharge">) {
  return by?.map(({ charge, resistance }) => [charge, resistance] as const);
}

/**
 * Open-circuit curve, resistance and capacity of a cell from its discharges.
 *
 *     V = V_oc(z) − R(z)·I,  z = 1 − q/C;  one R where the readings don't show that it varies
 *
 * @param request - discharges from full: charge drawn [C], voltage [V], current [A] of one cell; resistance [Ω] and capacity [C] known from elsewhere
 * @returns curve from empty to full [-, V], R and its curve [Ω], C [C], residuals [V], notes
 * @throws {OutOfRangeError} with the path of a reading that can't be
 * @throws {NotEnoughDataError} where no discharge covers the charge from full to empty, or R and V_oc can't be measured separately
 *
 * Valid at the temperature and age of the test; rests long enough to settle. Source: Kirchhoff's laws; charge counting; docs/method/fits/discharge.md
 */
export function fitDischarge(request: DischargeRequest): DischargeFit {
  request.runs.forEach((run, i) => {
    checkRun(run, `runs.${i}`);
  });
  const first = capacityOf(request);
  requirePositive("charge drawn", first.capacity);
  const { sag, capacity, byRun } = toldOf(request, first.capacity);
  const cell = { resistance: sag.resistance, resistanceCurve: resistanceCurveOf(sag) };
  const resistance = (charge: number) => cellResistance(cell, charge);
  const { curve, warnings } = openCircuitPoints(byRun.flat(), resistance);
  const at = openCircuitCurve(curve);
  const residuals = byRun.map((run) =>
    run.map(({ charge, voltage, current }) => ({
      charge,
      voltage: voltage - (at(charge) - resistance(charge) * current),
    })),
  );
  return {
    curve,
    ...sag,
    capacity,
    capacityFrom: first.capacityFrom,
    residuals,
    warnings: [...sag.warnings, ...warnings],
  };
}
