import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { STANDARD_GRAVITY } from "../constants.ts";

/** How far a lip stands off by the load on its vehicle: running gear that gives. */
export interface RideHeight {
  /** as set [m] */
  readonly gap: number;
  /** N₀, on the vehicle when it was set [N] */
  readonly load: number;
  /** k of tyres and springs together [N/m] */
  readonly stiffness: number;
}

/** What of a vehicle says how its lip rides. */
export interface Riding {
  readonly mass: number;
  /** k; null or absent: rigid [N/m] */
  readonly verticalStiffness?: number | null;
  /** N₀; null or absent: its own weight, m·g [N] */
  readonly gapLoad?: number | null;
}

/** The pull that presses a vehicle on. */
export interface Pull {
  /** with the lip as set [N], ≥ 0 */
  readonly set: number;
  /** null: rigid, the pull is the same whatever the load */
  readonly giving: Giving | null;
}

/** A pull that depends on the load, as the gap does. */
export interface Giving {
  /** stand-off under a load on the vehicle N [N], the skirt's bottom at 0 [m] */
  readonly gapUnder: (load: number) => number;
  /** F_s at a stand-off [m] → [N], ≥ 0 */
  readonly at: (gap: number) => number;
}

/**
 * The ride height of a vehicle whose running gear gives.
 *
 *     h_set at N₀, m·g unless given
 *
 * @param vehicle - mass [kg], stiffness [N/m], load when the gap was set [N]
 * @param gap - h_set [m]
 * @returns the ride height; null where it is rigid
 * @throws {OutOfRangeError} on a stiffness that is not above 0, a load below 0
 *
 * Valid for any vehicle. Source: docs/method/holding.md
 */
export function rideHeightOf(vehicle: Riding, gap: number): RideHeight | null {
  const { mass, verticalStiffness = null, gapLoad = null } = vehicle;
  if (gapLoad !== null) requireNonNegative("vehicle.gapLoad", gapLoad);
  if (verticalStiffness === null) return null;
  const stiffness = requirePositive("vehicle.verticalStiffness", verticalStiffness);
  return { gap, load: gapLoad ?? mass * STANDARD_GRAVITY, stiffness };
}

/**
 * Stand-off of the lip under a load.
 *
 *     h = max(0, h_set − (N − N₀)/k)
 *
 * @param rideHeight - gap as set [m], load then [N], stiffness [N/m]
 * @param load - N on the vehicle: pull and weight together, normal to the surface [N]
 * @returns h [m]; 0 where the skirt touches
 *
 * Valid for a straight spring; a skirt that touches is taken as rigid. Source: Hooke's law
 */
export function gapUnder({ gap, load: set, stiffness }: RideHeight, load: number): number {
  return Math.max(0, gap - (load - set) / stiffness);
}

/** @returns the pull of a vehicle whose gap stays as set [N] */
export function rigidPull(suction: number): Pull {
  return { set: Math.max(0, suction), giving: null };
}

/**
 * The pull of a vehicle, rigid or giving.
 *
 *     N → h by {@link gapUnder} → F_s(h)
 *
 * @param suction - F_s with the lip as set [N]
 * @param rideHeight - null: rigid
 * @param suctionAt - F_s at another stand-off [m] → [N]
 * @returns the pull, asked by load [N]; a stand-off is solved once
 *
 * Valid as its parts. Source: docs/method/holding.md
 */
export function pullOf(
  suction: number,
  rideHeight: RideHeight | null,
  suctionAt: (gap: number) => number,
): Pull {
  if (!rideHeight) return rigidPull(suction);
  const solved = new Map<number, number>([[rideHeight.gap, Math.max(0, suction)]]);
  const at = (gap: number): number => {
    const known = solved.get(gap);
    if (known !== undefined) return known;
    const pull = Math.max(0, suctionAt(gap));
    solved.set(gap, pull);
    return pull;
  };
  return { set: at(rideHeight.gap), giving: { gapUnder: (load) => gapUnder(rideHeight, load), at } };
}
