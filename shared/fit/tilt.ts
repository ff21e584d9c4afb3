import { NotEnoughDataError, OutOfRangeError } from "../numeric/errors.ts";

/** Acceleration as a phone's sensor gives it at rest: gravity, in its own axes [m/s²]. */
export type Gravity = readonly [x: number, y: number, z: number];

const lengthOf = ([x, y, z]: Gravity): number => Math.hypot(x, y, z);

/**
 * Angle through which a board was tilted: between gravity as it is and as it was on the level board.
 *
 *     θ = atan2(|a × b|, a · b)
 *
 * @param level - gravity in the phone's axes on the level board [m/s²]
 * @param now - the same on the tilted board [m/s²]
 * @returns the tilt, 0 to π [rad]
 * @throws {OutOfRangeError} where either is no direction: zero or not finite
 *
 * Valid at rest, the phone lying still on the board. Source: vector geometry; docs/method/tilt.md
 */
export function tiltBetween(level: Gravity, now: Gravity): number {
  for (const [name, each] of [
    ["level", level],
    ["now", now],
  ] as const) {
    const length = lengthOf(each);
    if (!(length > 0 && Number.isFinite(length)))
      throw new OutOfRangeError(name, length, "finite, greater than 0");
  }
  const [[a, b, c], [x, y, z]] = [level, now];
  const cross = Math.hypot(b * z - c * y, c * x - a * z, a * y - b * x);
  return Math.atan2(cross, a * x + b * y + c * z);
}

/** Gravity over a short while. */
export interface Rest {
  /** mean of the samples [m/s²] */
  readonly gravity: Gravity;
  /** standard deviation of the samples' direction about the mean [rad] */
  readonly scatter: number;
  /** of the samples [-] */
  readonly count: number;
}

/**
 * Mean gravity of some samples, and how much their direction scatters.
 *
 * @param samples - one after another [m/s²]
 * @returns mean [m/s²] and scatter [rad]
 * @throws {NotEnoughDataError} on fewer than two
 */
export function restOf(samples: readonly Gravity[]): Rest {
  const count = samples.length;
  if (count < 2)
    throw new NotEnoughDataError(
      "The sensor gave fewer than two readings.",
      "Let the phone lie still for a second.",
    );
  const mean = (axis: 0 | 1 | 2) => samples.reduce((sum, each) => sum + each[axis], 0) / count;
  const gravity: Gravity = [mean(0), mean(1), mean(2)];
  const squares = samples.reduce((sum, each) => sum + tiltBetween(gravity, each) ** 2, 0);
  return { gravity, scatter: Math.sqrt(squares / (count - 1)), count };
}

/** What a phone's sensor is off by beside its scatter: offsets of 20 mg that the zero doesn't take out whole. Common practice, no source. [rad] */
const SENSOR = (0.3 * Math.PI) / 180;

/**
 * Tilt of a board from two rests of a phone on it, with its standard uncertainty.
 *
 * @param level - on the level board
 * @param now - on the tilted one
 * @returns tilt and standard uncertainty [rad]
 * @throws {OutOfRangeError} where a rest has no direction
 */
export function tiltOf(level: Rest, now: Rest): { readonly tilt: number; readonly uncertainty: number } {
  const [a, b] = [level, now].map(({ scatter, count }) => scatter / Math.sqrt(count));
  return { tilt: tiltBetween(level.gravity, now.gravity), uncertainty: Math.hypot(a, b, SENSOR) };
}
