import { cellVoltages } from "../../../../shared/book/cellVoltages.ts";
import type { ThrustPoint } from "../../../../shared/book/propellerBasis.ts";
import type { Book, Resolved } from "../../../../shared/book/resolve.ts";
import { airFrom } from "../../../../shared/physics/air.ts";
import { cellAtVoltage } from "../../../../shared/physics/cells/cell.ts";
import { STANDARD_AIR_DENSITY } from "../../../../shared/physics/constants.ts";
import { propellerCoefficients, propellerUnits } from "../../../../shared/physics/fanlaws/propeller.ts";
import { requiredSuction } from "../../../../shared/physics/hold/holdAt.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { atCell } from "../../../../shared/physics/predictAny.ts";
import { type PropellerPredictInput, predictPropeller } from "../../../../shared/physics/propeller.ts";
import { type ThrustCurvePoint, thrustCurve } from "../../../../shared/physics/propellerLaw.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { attitudeRows, type Outcome } from "../../../state/outcome.ts";
import type { MeasuredPoint } from "../measured.ts";
import type { Level } from "../picture.ts";

/** Where the propeller settles at one charge. */
export interface ChargeMark {
  readonly key: "full" | "rest" | "cutOff";
  /** [rad/s] */
  readonly speed: number;
  /** [N] */
  readonly thrust: number;
  readonly extrapolated: boolean;
}

/** Everything that Match draws of a build that a propeller presses on. */
export interface ThrustPicture {
  readonly outcome: Outcome;
  readonly curve: readonly ThrustCurvePoint[];
  /** none where the propeller stands still */
  readonly marks: readonly ChargeMark[];
  /** as layers of the match chart take them: the pressure is a thrust [N] */
  readonly levels: readonly Level[];
  /** the flow is a speed [rad/s], the pressure a thrust [N] */
  readonly measured: readonly MeasuredPoint[];
  /** ends of the scales [rad/s], [N] */
  readonly mostSpeed: number;
  readonly mostForce: number;
}

const CURVE_POINTS = 80;
/** A level far above the thrust made is named at the top instead of flattening the curve. */
const MOST_HEADROOM = 1.9;
const MARGIN = 1.06;
const SAME_ANGLE = 0.5;

/** @returns the thrust that wall, ceiling, the user's own attitudes and the worst one need at the build's mass */
function levelsOf(outcome: Outcome, { vehicle }: PropellerPredictInput): Level[] {
  const { prediction } = outcome;
  if (!prediction) return [];
  const rows = attitudeRows(outcome).map(({ title, angle }) => ({ key: `at ${angle}`, title, angle }));
  const { angle } = prediction.worst.parked;
  const named = rows.some((row) => Math.abs(row.angle - angle) < SAME_ANGLE)
    ? rows
    : [...rows, { key: "worst", title: "worst", angle }];
  return named.flatMap((each) => {
    const force = requiredSuction(vehicle, each.angle).parked;
    return force > 0 && Number.isFinite(force) ? [{ ...each, pressure: force }] : [];
  });
}

function marksOf(build: Outcome["build"], resolved: Resolved, input: PropellerPredictInput): ChargeMark[] {
  const [volts, pack] = [cellVoltages(build, resolved), resolved.pack];
  if (!volts || !pack) return [];
  return (["full", "rest", "cutOff"] as const).flatMap((key) => {
    const { point } = predictPropeller(atCell(input, cellAtVoltage(pack.cell, volts[key])), []);
    return point ? [{ key, speed: point.speed, thrust: point.thrust, extrapolated: point.extrapolated }] : [];
  });
}

function words(point: ThrustPoint): string {
  const rpm = formatQuantity(point.rpm * RPM, "speed", { decimals: 0 });
  return [rpm, formatQuantity(point.diameter, "length"), formatQuantity(point.thrust, "load")].join(" · ");
}

/** Readings as they would stand at the build's size and in its air: same speed, same coefficient. */
function measuredOf(book: Book, { thrust }: Resolved, input: PropellerPredictInput): MeasuredPoint[] {
  const { density } = airFrom(input.air);
  const titles = new Map(book.tests.map((test) => [test.id, test.data.title || test.data.date]));
  return (thrust?.points ?? []).map((point) => {
    const speed = point.rpm * RPM;
    const read = { diameter: point.diameter, speed, density: point.density ?? STANDARD_AIR_DENSITY };
    const { thrust: level } = propellerCoefficients({ thrust: point.thrust, shaftPower: null }, read);
    const here = propellerUnits({ diameter: input.rotor.diameter, speed, density });
    return {
      key: `${point.testId} ${point.row}`,
      flow: speed,
      pressure: level * here.thrust,
      read: words(point),
      test: titles.get(point.testId) ?? point.testId,
      setAside: point.setAside,
    };
  });
}

/**
 * Thrust against speed of one build.
 *
 * @param book - the book, for the readings' own words
 * @param outcome - the solved build
 * @returns null where no propeller presses it on, or its numbers are not known
 */
export function thrustPictureOf(book: Book, outcome: Outcome): ThrustPicture | null {
  const { resolved } = outcome;
  const input = resolved?.propeller;
  if (!resolved || !input) return null;
  const marks = marksOf(outcome.build, resolved, input);
  const measured = measuredOf(book, resolved, input);
  const mostSpeed = Math.max(...marks.map((m) => m.speed), ...measured.map((m) => m.flow), 1) * MARGIN;
  const curve = thrustCurve(input.rotor, airFrom(input.air), mostSpeed, CURVE_POINTS);
  const made = Math.max(...curve.map((point) => point.thrust), ...measured.map((m) => m.pressure));
  const levels = levelsOf(outcome, input);
  const shown = levels.filter((level) => level.pressure <= MOST_HEADROOM * made);
  const mostForce = Math.max(made, ...shown.map((level) => level.pressure)) * MARGIN || 1;
  return { outcome, curve, marks, levels, measured, mostSpeed, mostForce };
}
