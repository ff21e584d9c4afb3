import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { chargeVoltage } from "../chargeVoltage.ts";
import { placeAt } from "../numberAt.ts";
import type { Uncertainties } from "../uncertainInput.ts";
import type { MapBuild } from "./place.ts";

/** What is uncertain in a build that a map moves; plain data, fit for other threads. */
export interface MapUncertain {
  readonly uncertain: Uncertainties;
  /** the build as its uncertainties were told [SI] */
  readonly told: AnyPredictInput;
  /** standard uncertainty of the state of charge behind that of the voltage [-]; null: the voltage's own is stated */
  readonly charge: number | null;
}

const VOLTAGE = "pack.openCircuitVoltage";

/** By how much the uncertainty of a number grows with the winding: relative to it, as the frame was measured. */
function growth(told: AnyPredictInput, there: AnyPredictInput): (path: string) => number {
  const [kv, resistance] = [there.motor.kv / told.motor.kv, there.motor.resistance / told.motor.resistance];
  return (path) => (path === "motor.kv" ? kv : path === "motor.resistance" ? resistance : 1);
}

const kept = <T>(record: Readonly<Record<string, T>>, keep: (key: string) => boolean) =>
  Object.entries(record).filter(([key]) => keep(key));

/**
 * What is uncertain in a build that stands at a place of a map.
 *
 *     each number as uncertain as where the build was told, in its own unit; K_v and R relative to themselves; the voltage by the charge that is there
 *
 * @param of - the build that the map moves: its cell
 * @param asked - what is uncertain, and the build that it was told of [unit of each number]
 * @param there - the build at the place [SI]
 * @param charge - z there [-]
 * @returns uncertainties of the numbers that the build has there [unit of each number]
 *
 * Valid for windings of one frame. Source: docs/method/map.md, Chance of holding
 */
export function uncertainAt(
  { cell }: Pick<MapBuild, "cell">,
  { uncertain, told, charge: chargeSd }: MapUncertain,
  there: AnyPredictInput,
  charge: number,
): Uncertainties {
  const has = (path: string) => placeAt(there, path) !== null;
  const by = growth(told, there);
  const {
    uncertainty,
    logNormal = {},
    correlated = [],
    joint = null,
    shared = [],
    followers = [],
  } = uncertain;
  const voltage = chargeSd === null ? null : chargeVoltage(cell.curve, charge, chargeSd);
  const sdOf = (path: string, sd: number) => (path === VOLTAGE && voltage !== null ? voltage : sd * by(path));
  const only = (path: string | null) => (path !== null && has(path) ? path : null);
  return {
    uncertainty: Object.fromEntries(kept(uncertainty, has).map(([path, sd]) => [path, sdOf(path, sd)])),
    logNormal: Object.fromEntries(kept(logNormal, has)),
    correlated: correlated.flatMap(({ paths, covariance }) => {
      const places = paths.flatMap((path, i) => (has(path) ? [i] : []));
      if (places.length === 0) return [];
      const grown = (i: number, j: number) => covariance[i][j] * by(paths[i]) * by(paths[j]);
      return [
        { paths: places.map((i) => paths[i]), covariance: places.map((i) => places.map((j) => grown(i, j))) },
      ];
    }),
    joint: joint && {
      table: joint.table,
      paths: {
        gap: only(joint.paths.gap),
        pullFactor: only(joint.paths.pullFactor),
        friction: only(joint.paths.friction),
      },
    },
    shared: shared.flatMap(({ name, effects }) => {
      const moved = effects
        .filter(({ path }) => has(path))
        .map((each) => (each.onLogarithm ? each : { ...each, by: each.by * by(each.path) }));
      return moved.length > 0 ? [{ name, effects: moved }] : [];
    }),
    followers: followers.flatMap((follower) => {
      const leaders = kept(follower.by, has).map(([path, d]) => [path, d / by(path)] as const);
      return has(follower.path) && leaders.length > 0
        ? [{ path: follower.path, by: Object.fromEntries(leaders) }]
        : [];
    }),
  };
}
