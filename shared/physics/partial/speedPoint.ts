import { evaluatePolynomial } from "../../numeric/polynomial.ts";
import { type Air, airFrom } from "../air.ts";
import { suctionAt } from "../assembly.ts";
import { readingOf } from "../fanlaws/coefficients.ts";
import { phiAtSpeed } from "../point/phiAtSpeed.ts";
import { isBeyondTested, thrustAndPower } from "../propellerLaw.ts";
import { isSealed, type Leak, leakFlow } from "../restriction/leak.ts";
import { skirtLeak } from "../skirt.ts";
import type { AtSpeeds, PartialVehicle } from "./input.ts";

/** What a rotor does at one speed. */
export interface SpeedPoint {
  /** [rad/s] */
  readonly speed: number;
  /** Q; null for a propeller [m³/s] */
  readonly flow: number | null;
  /** Δp of the cavity; null for a propeller [Pa] */
  readonly pressure: number | null;
  /** F_s, jet included, or thrust [N] */
  readonly suction: number;
  readonly extrapolated: boolean;
}

type Ducted = Extract<AtSpeeds["rotor"], { kind: "ducted" }>;
type Propeller = Extract<AtSpeeds["rotor"], { kind: "propeller" }>;

function ductedAt(
  { curve, skirt }: Ducted,
  state: { readonly leak: Leak; readonly air: Air },
  vehicle: PartialVehicle,
  speed: number,
): SpeedPoint | null {
  const { leak, air } = state;
  const turning = { diameter: curve.diameter, speed, density: air.density };
  const at = (phi: number) => {
    const psi = Math.max(0, evaluatePolynomial(curve.psi, phi));
    const { flow, pressure } = readingOf({ phi, psi, lambda: null }, turning);
    return { flow, pressure };
  };
  const excess = (phi: number) => leakFlow(leak, air, at(phi).pressure) - at(phi).flow;
  const phi = isSealed(leak) ? 0 : phiAtSpeed(curve, excess);
  if (phi === null) return null;
  const { flow, pressure } = at(phi);
  const extrapolated = phi < curve.phiMin || phi > curve.phiMax;
  return {
    speed,
    flow,
    pressure,
    suction: suctionAt({ skirt, vehicle }, state, pressure, flow),
    extrapolated,
  };
}

function propellerAt({ curve }: Propeller, air: Air, speed: number): SpeedPoint {
  const rotor = { ...curve, power: [0, 0] } as const;
  const { thrust } = thrustAndPower(rotor, air, speed);
  return {
    speed,
    flow: null,
    pressure: null,
    suction: thrust,
    extrapolated: isBeyondTested(rotor, air, speed),
  };
}

/**
 * What a rotor does at given speeds, whatever it takes to turn it.
 *
 *     ducted: ½ρu²ψ(φ) = Δp_leak(φ·A·u), the crossing of largest flow;  propeller: T = C_T(Re)·ρn²D⁴
 *
 * @param blower - rotor at speeds [rad/s], its skirt, the air
 * @param vehicle - jet area [m²] and angle [°]
 * @returns flow [m³/s], Δp [Pa], pull [N] by speed; none of a speed at which rotor and leak do not meet
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where ψ has no zero and the leak stays under it
 *
 * Valid as the fan laws, without a size correction, which needs λ. Source: docs/method/operating-point.md
 */
export function speedPoints(
  { rotor, air: weather, speeds }: AtSpeeds,
  vehicle: PartialVehicle,
): SpeedPoint[] {
  const air = airFrom(weather);
  if (rotor.kind === "propeller") return speeds.map((speed) => propellerAt(rotor, air, speed));
  const state = { leak: skirtLeak(rotor.skirt, air), air };
  return speeds.flatMap((speed) => ductedAt(rotor, state, vehicle, speed) ?? []);
}
