import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Air } from "../../physics/air.ts";
import { skirtOver, waysMet } from "../../physics/joints.ts";
import { asFastCase, type FastCase } from "../../physics/point/fastCase.ts";
import { isSealed, type Leak } from "../../physics/restriction/leak.ts";
import { type SkirtInput, skirtLeak } from "../../physics/skirt.ts";
import { type GivingNeeds, givingNeeds } from "./givingNeeds.ts";
import { type HoldNeeds, holdNeeds } from "./holdNeeds.ts";
import { skirtAt } from "./input.ts";
import type { Problem, TriedSkirt, TriedStand } from "./problem.ts";

/** A skirt at one gap in one place: how it leaks, what it pulls on. */
export interface PlacedSkirt {
  readonly skirt: SkirtInput;
  readonly leak: Leak;
  /** the leak as the fast solvers take it; null: every combination with it is scanned */
  readonly fast: FastCase | null;
  /** a lip whose flow the fast solvers find by its velocity */
  readonly lip: boolean;
  readonly sealed: boolean;
  /** A_inside and P·ℓ [m²] */
  readonly area: number;
  readonly lipArea: number;
  /** part of the lip over a joint [-] */
  readonly overJoint: number;
}

/** What the wanted attitudes need of whatever presses the vehicle on. */
export interface Needs {
  readonly parked: HoldNeeds;
  readonly driving: HoldNeeds;
}

/** A skirt at one gap: how it leaks, how it pulls, what it makes the wanted attitudes need. */
export interface FittedSkirt extends PlacedSkirt, Needs {
  /** κ [-] */
  readonly pullFactor: number;
  /** over each joint, each way; none where crossing them is no wish */
  readonly over: readonly PlacedSkirt[];
  /** null: rigid running gear, or a case for the general solver */
  readonly giving: GivingNeeds | null;
}

type Rubbing = Pick<TriedStand, "share" | "wheelFriction" | "skirtFriction">;

const vehicleOn = ({ fixed }: Problem, { share, wheelFriction, skirtFriction }: Rubbing) => ({
  ...fixed.vehicle,
  skirtShare: share,
  wheelFriction,
  skirtFriction,
});

/**
 * What the wanted attitudes need of a vehicle that stands on a skirt, or on none.
 *
 *     as {@link holdNeeds}, parked and driving
 *
 * @param problem - vehicle and wanted attitudes, SI
 * @param stand - share and frictions [-]
 * @returns needs of both modes
 * @throws {OutOfRangeError} on a vehicle that can't be
 *
 * Valid and source: as {@link holdNeeds}
 */
export function needsOn(problem: Problem, stand: Rubbing): Needs {
  const vehicle = vehicleOn(problem, stand);
  const { wants } = problem;
  return {
    parked: holdNeeds(vehicle, wants.attitudes, "parked"),
    driving: holdNeeds(vehicle, wants.attitudes, "driving"),
  };
}

/** A skirt in one place, on the surface or over a joint. */
function placed(skirt: SkirtInput, air: Air): PlacedSkirt {
  const { perimeter, land, area, joint } = skirt;
  const leak = skirtLeak(skirt, air);
  const fast = asFastCase(leak, air);
  const lipArea = requirePositive("skirt.perimeter", perimeter) * requireNonNegative("skirt.land", land);
  return {
    skirt,
    leak,
    fast,
    lip: fast !== null && fast.gapArea > 0,
    sealed: isSealed(leak),
    area: requireNonNegative("skirt.area", area),
    lipArea,
    overJoint: fast !== null && fast.jointArea > 0 && joint ? joint.span / perimeter : 0,
  };
}

function overJoints({ wants }: Problem, { joints }: TriedSkirt, skirt: SkirtInput, air: Air) {
  if (!joints || (wants.leastCrossing ?? null) === null) return [];
  return joints.joints.flatMap((joint) =>
    waysMet(joint).map((way) => placed(skirtOver(skirt, joint, way, joints.span), air)),
  );
}

/**
 * A skirt at one gap, made ready.
 *
 *     its leak by {@link skirtLeak}, as a fast case where it is one
 *
 * @param problem - vehicle and wanted attitudes, SI
 * @param tried - skirt, share and friction, SI
 * @param standOff - h_set [m]
 * @param air - density [kg/m³], viscosity [Pa·s], pressure [Pa]
 * @returns the skirt at that gap, SI
 * @throws {OutOfRangeError} on a skirt that can't be
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function fittedSkirtOf(problem: Problem, tried: TriedSkirt, standOff: number, air: Air): FittedSkirt {
  requireNonNegative("skirt.gap", standOff);
  requireNonNegative("skirt.roughness", tried.roughness);
  const skirt = skirtAt(tried, standOff);
  return {
    ...placed(skirt, air),
    ...needsOn(problem, tried),
    over: overJoints(problem, tried, skirt, air),
    pullFactor: requirePositive("skirt.pullFactor", tried.pullFactor ?? 1),
    giving:
      (problem.fixed.vehicle.verticalStiffness ?? null) === null
        ? null
        : givingNeeds(vehicleOn(problem, tried), problem.wants.attitudes),
  };
}
