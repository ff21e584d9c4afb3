import type { WantedHold } from "../../decide/size/input.ts";
import { pullBy, pulled, wantedMargin } from "../../decide/wanted.ts";
import type { Build } from "../../model/build.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import { cellAtVoltage } from "../../physics/cells/cell.ts";
import { torqueConstant } from "../../physics/motor.ts";
import { atCell } from "../../physics/predictAny.ts";
import type { Book } from "../book.ts";
import { motorBasis } from "../motorBasis.ts";
import { resolveBuild, solvable } from "../resolve.ts";

/** A size and the winding that it wants. */
export interface WantedMotor {
  /** family of the book */
  readonly rotor: string;
  /** [m] */
  readonly diameter: number;
  /** [rpm/V] */
  readonly kv: number;
  /** K_m [N·m/√W] */
  readonly motorConstant: number;
  /** of one cell at rest [V] */
  readonly cellVoltage: number;
  readonly hold: WantedHold;
}

/** A motor of the book on that size, and what it would do. */
export interface NearMotor {
  readonly id: string;
  readonly name: string;
  /** [rpm/V] */
  readonly kv: number;
  /** K_m [N·m/√W] */
  readonly motorConstant: number;
  /** on the attitude that is wanted [-]; infinite where nothing is needed */
  readonly margin: number;
  /** from the pack [W]; null where the rotor stands */
  readonly packPower: number | null;
  readonly build: Build;
}

/** Off by K_v either way, and by strength where it has less, as logarithms. */
function distance({ kv, motorConstant }: NearMotor, wanted: WantedMotor): number {
  return Math.hypot(Math.log(kv / wanted.kv), Math.log(Math.min(1, motorConstant / wanted.motorConstant)));
}

function tried(book: Book, base: Build, id: string, name: string, wanted: WantedMotor): NearMotor | null {
  const basis = motorBasis(book, id);
  if (!basis) return null;
  const { kv, resistance } = basis.constants;
  const build = { ...base, rotor: wanted.rotor, diameter: wanted.diameter, motor: id };
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  const cell = resolved.pack?.cell;
  if (!input || !cell) return null;
  const { angle: attitude, mode } = wanted.hold;
  const done = answerOrNull(() => {
    const there = atCell(input, cellAtVoltage(cell, wanted.cellVoltage));
    const pull = pulled(there);
    const margin = wantedMargin(there.vehicle, pullBy(there, pull), { attitude, mode });
    return { margin, point: pull.point };
  });
  if (!done) return null;
  const { margin, point } = done;
  const packPower = point && point.packVoltage * point.packCurrent;
  return {
    id,
    name,
    kv,
    motorConstant: torqueConstant(kv) / Math.sqrt(resistance),
    margin,
    packPower,
    build,
  };
}

/**
 * Motors of the book on a size, the nearest to the winding that it wants first.
 *
 *     by √(ln²(K_v/K_v,wanted) + ln²(min(1, K_m/K_m,wanted)))
 *
 * @param book - the whole bench book
 * @param base - the build that gives all the rest
 * @param wanted - family, size [m], K_v [rpm/V], K_m [N·m/√W], cell voltage [V], margin
 * @returns those with constants, each with the margin that it brings [-] and its watts [W]
 */
export function nearMotors(book: Book, base: Build, wanted: WantedMotor): NearMotor[] {
  return book.motors
    .filter(({ data }) => !data.retired)
    .flatMap(({ id, data }) => tried(book, base, id, data.name, wanted) ?? [])
    .sort((a, b) => distance(a, wanted) - distance(b, wanted));
}
