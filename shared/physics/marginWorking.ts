import { STANDARD_GRAVITY } from "./constants.ts";
import { cosineOfDegrees } from "./hold/angle.ts";
import type { Mode } from "./hold/holdAt.ts";
import { type GivingHold, holdUnder } from "./hold/holdUnder.ts";
import { compileHold } from "./hold/law.ts";
import type { Pull } from "./hold/pull.ts";
import { type Vehicle, vehicleWeight } from "./hold/vehicle.ts";
import { explain, type Row, type Working, workedOut } from "./working.ts";

const NEEDS: Readonly<Record<Mode, string>> = {
  liftOff: "F + W·cos θ > 0",
  slide: "[μ_w(1−σ_s) + μ_s·σ_s](F + W·cos θ) ≥ W·sin θ",
  tip: "both axle lines stay loaded for headings up, down and across",
  climb: "μ_w·N_driven ≥ W·sin θ + c_rr(1−σ_s)N + μ_s·σ_s·N",
};

const LEVEL = "The pull needed is the one at which the second line just holds.";
/** What is taken for granted of a margin. */
const ASSUMED = {
  parked: [LEVEL, "Parked, in the worst of the headings up, down and across."],
  driving: [LEVEL, "Driving nose uphill at a steady speed; the lesser of climb and the parked margins."],
} as const;

/**
 * Working of a vehicle's weight.
 *
 *     W = m·g·(1 + j)
 *
 * @param input - the vehicle, SI
 * @returns equation, inserted values and weight [N]
 *
 * Valid and source: as {@link vehicleWeight}
 */
export function weightWorking({ vehicle }: { readonly vehicle: Vehicle }): Working {
  return explain(
    {
      title: "weight, jolts included",
      equation: "W = m·g·(1 + j)",
      inputs: {
        mass: ["m", "mass on board", "kg"],
        gravity: ["g", "standard gravity", "m/s²"],
        jolt: ["j", "jolt over gravity", ""],
      },
      output: ["W", "N"],
      source: "Newton's second law; docs/method/holding.md",
      evaluate: ({ mass, jolt }) => vehicleWeight({ mass, jolt }),
    },
    { mass: vehicle.mass, gravity: STANDARD_GRAVITY, jolt: vehicle.jolt },
  );
}

/** What was put in besides where the gap gives: the load at the limit, and the stand-off that it leaves. */
function givingRows({ gaps, required, angle }: GivingHold, mode: Mode, weight: number): Row[] {
  const gap = gaps?.[mode] ?? null;
  if (gap === null) return [];
  const load = required[mode] + weight * cosineOfDegrees(angle);
  return [
    [["N", "load on the vehicle where it lets go, F_needed + W·cos θ", "N"], load],
    [["h", "gap under that load", "m"], gap],
  ];
}

/**
 * Working of the margin at one attitude, by the mode that governs.
 *
 *     margin = F/F_needed, F at the gap under the load of that mode's own limit where the gap gives
 *
 * @param input - the vehicle, SI
 * @param pull - rigid or giving [N]
 * @param angle - θ of the surface [°]
 * @param state - parked, or driving nose uphill: the lesser of climb and the parked modes [-]
 * @returns equation, inserted values and margin [-]; null where no pull is needed, or none suffices
 * @throws {OutOfRangeError} on a vehicle that can't be, an angle beyond 0…180
 *
 * Valid and source: as {@link holdUnder}
 */
export function marginWorking(
  { vehicle }: { readonly vehicle: Vehicle },
  pull: Pull,
  angle: number,
  state: "parked" | "driving" = "driving",
): Working | null {
  const hold = holdUnder(compileHold(vehicle), pull, angle);
  const mode = hold[state].governs[0];
  if (mode === undefined || !(hold.required[mode] < Number.POSITIVE_INFINITY)) return null;
  const weight = vehicleWeight(vehicle);
  const margin = hold[state].margin ?? Number.NaN;
  const rows: Row[] = [
    [["F", "pull", "N"], margin * hold.required[mode]],
    [["F_needed", "pull needed", "N"], hold.required[mode]],
    [["W", "weight, jolts included", "N"], weight],
    [["θ", "inclination in degrees, 180 is a ceiling", ""], angle],
    [["μ_w", "friction of the wheels", ""], vehicle.wheelFriction],
    ...givingRows(hold, mode, weight),
  ];
  return workedOut(
    {
      title: `margin at ${angle.toFixed(0)}°, ${state}`,
      equation: `margin = F${hold.gaps ? "(h)" : ""}/F_needed,  ${NEEDS[mode]}`,
      assumptions: ASSUMED[state],
      output: ["margin", ""],
      source: "statics of a body held by suction; docs/method/holding.md",
    },
    rows,
    margin,
  );
}

/**
 * Workings of the margins at several attitudes, parked and driving.
 *
 *     one a state and an attitude
 *
 * @param input - the vehicle, SI
 * @param pull - rigid or giving [N]
 * @param angles - θ [°]
 * @returns workings of the margins that there are [-]
 * @throws {OutOfRangeError} as {@link marginWorking}
 *
 * Valid and source: as {@link marginWorking}
 */
export function marginWorkings(
  input: { readonly vehicle: Vehicle },
  pull: Pull,
  angles: readonly number[],
): Working[] {
  return angles.flatMap((angle) =>
    (["driving", "parked"] as const).flatMap((state) => marginWorking(input, pull, angle, state) ?? []),
  );
}
