import type { DischargeTest } from "../../model/tests/discharge.ts";
import { cellAt } from "../../physics/cells/cell.ts";
import { predictAny } from "../../physics/predictAny.ts";
import { findById } from "../book.ts";
import { solvable } from "../resolve.ts";
import { type Asked, type Planned, plannedHead, scatter, withTest } from "./planned.ts";

/** Charges to read at, each at rest and under load [-]. */
const CHARGES = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0.03];
/** What single voltage readings scatter by [-]. Judgement. */
const SCATTER = 0.001;

/** @returns a discharge of the build's pack at the current that the build draws, rests between, by what is now held true; null without a curve */
export function plannedDischarge({ book, build, resolved }: Asked): Planned | null {
  const pack = findById(book.packs, build.pack)?.data;
  const input = solvable(resolved);
  const point = input && predictAny(input, []).point;
  if (!pack || !point || resolved.pack?.cell === undefined || !(point.packCurrent > 0)) return null;
  const { cell } = resolved.pack;
  const whole = cell.capacity * pack.parallel;
  const zs = scatter(2 * CHARGES.length);
  const rows = CHARGES.flatMap((charge, i) => {
    const { voltage, resistance } = cellAt(cell, charge);
    const rest = pack.series * voltage;
    const sag = (pack.series * resistance * point.packCurrent) / pack.parallel;
    const drawn = { value: (1 - charge) * whole, unit: "C" };
    const row = (voltage: number, current: number, z: number) => ({
      charge: drawn,
      voltage: { value: voltage * (1 + SCATTER * z), unit: "V" },
      current: { value: current, unit: "A" },
    });
    return [row(rest, 0, zs[2 * i]), row(rest - sag, point.packCurrent, zs[2 * i + 1])];
  });
  const head = { kind: "discharge", ...plannedHead, pack: build.pack, across: "pack" } as const;
  const test: DischargeTest = { ...head, end: "stopped", instruments: {}, rows };
  return {
    key: "discharge",
    kind: "discharge",
    title: `Discharge test of ${pack.name}, eleven charges, at rest and under load`,
    takes: "a load of the vehicle's own current, a charge counter, attended, on a fire-safe place; an hour",
    book: withTest(book, "discharge", test),
    build,
  };
}
