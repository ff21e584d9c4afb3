import { OutOfRangeError } from "../../numeric/errors.ts";
import { findRoot } from "../../numeric/root.ts";
import { type Air, airFrom } from "../../physics/air.ts";
import { type PullingVehicle, suctionAt } from "../../physics/assembly.ts";
import { cosineOfDegrees } from "../../physics/hold/angle.ts";
import type { Delivery } from "../../physics/point/turning.ts";
import { type Leak, leakFlow } from "../../physics/restriction/leak.ts";
import { type SkirtInput, skirtLeak } from "../../physics/skirt.ts";
import { typedText } from "../../units/shown.ts";
import type { SizeBuild } from "./input.ts";

/** What the rotor must do, whatever its size. */
export interface Duty extends Delivery {
  /** F_s [N] */
  readonly pull: number;
  /** Q·Δp: no fan does it with less [W] */
  readonly airPower: number;
}

/** Where the search for the suction begins, over the pull spread on the whole skirt, and by how much it grows. */
const [FIRST, GROWTH] = [1e-6, 1.25];
/** Steps of the search: up to some 10¹² times the first suction. */
const MOST_STEPS = 180;

/** A search for the least suction: a jet towards the surface can keep the pull from ever being reached. */
function searchedSuction(pullAt: (pressure: number) => number, pull: number, area: number): number {
  let [below, most] = [0, 0];
  let pressure = (FIRST * pull) / area;
  for (let i = 0; i < MOST_STEPS; i++, pressure *= GROWTH) {
    const made = pullAt(pressure);
    if (made >= pull) return findRoot((p) => pullAt(p) - pull, below, pressure).root;
    most = Math.max(most, made);
    below = pressure;
  }
  throw new OutOfRangeError(
    "pull",
    pull,
    `up to ${typedText(most, "load", 4)}: the jet pushes the rest off again`,
  );
}

/** Where the jet pushes nothing off, the pull rises throughout: no more than this much of what half the lip needs [-]. */
const ROOM = 1.001;
/** σ_l is this or more [-]. */
const LEAST_SHARE = 0.5;

/** What of a build a suction is found with. */
interface Pulling {
  readonly skirt: SkirtInput;
  readonly vehicle: PullingVehicle;
  readonly leak: Leak;
  readonly air: Air;
}

/**
 * The least suction that makes a pull.
 *
 *     F_s(Δp) = F with Q = Q_leak(Δp)
 *
 * @param of - skirt, its leak and air, jet and pull factor, SI
 * @param pull - F [N], > 0
 * @returns Δp [Pa]
 * @throws {OutOfRangeError} on a skirt without an area to pull on, a pull that its jet never lets it reach
 *
 * Valid as {@link suctionAt}. Source: docs/method/size.md
 */
export function suctionFor({ skirt, vehicle, leak, air }: Pulling, pull: number): number {
  const lip = skirt.perimeter * skirt.land;
  const pullAt = (pressure: number) =>
    suctionAt({ skirt, vehicle }, { leak, air }, pressure, leakFlow(leak, air, pressure));
  const most = (ROOM * pull) / ((vehicle.pullFactor ?? 1) * (skirt.area + LEAST_SHARE * lip));
  const pushesOff = vehicle.jetArea !== null && cosineOfDegrees(vehicle.jetAngle) < 0;
  if (pushesOff || !Number.isFinite(most)) return searchedSuction(pullAt, pull, skirt.area + lip);
  return findRoot((pressure) => pullAt(pressure) - pull, 0, most).root;
}

/**
 * Suction, flow and air power that a pull takes from a skirt.
 *
 *     F_s(Δp) = F with Q = Q_leak(Δp), the least such Δp;  P_air = Q·Δp
 *
 * @param build - skirt, jet, pull factor and air, SI
 * @param skirt - of the build [m, m²]
 * @param pull - F [N], > 0
 * @returns Δp [Pa], Q [m³/s], Q·Δp [W]
 * @throws {OutOfRangeError} on a skirt without an area to pull on, a pull that its jet never lets it reach
 *
 * Valid as {@link suctionAt}. Source: docs/method/size.md
 */
export function dutyOf(build: Pick<SizeBuild, "air" | "vehicle">, skirt: SkirtInput, pull: number): Duty {
  const air: Air = airFrom(build.air);
  const leak: Leak = skirtLeak(skirt, air);
  const pressure = suctionFor({ skirt, vehicle: build.vehicle, leak, air }, pull);
  const flow = leakFlow(leak, air, pressure);
  return { pull, pressure, flow, airPower: flow * pressure };
}
