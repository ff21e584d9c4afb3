import { evaluatePolynomial } from "../../numeric/polynomial.ts";
import { airFrom } from "../air.ts";
import { type Assembly, assemble, type PredictInput, suctionAt } from "../assembly.ts";
import { type Pull, pullOf, rideHeightOf, rigidPull } from "../hold/pull.ts";
import { psiAt } from "../point/machine.ts";
import { phiAtSpeed } from "../point/phiAtSpeed.ts";
import { type AnyPredictInput, isPropeller } from "../predictAny.ts";
import { thrustAndPower } from "../propellerLaw.ts";
import { isSealed, type Leak, leakFlow } from "../restriction/leak.ts";
import { skirtAtGap, skirtLeak } from "../skirt.ts";

/** What a rotor does at any speed, whatever turns it. */
export interface Turning {
  /** M_rotor by ω [rad/s] → [N·m] */
  readonly torque: (speed: number) => number;
  /** what presses the vehicle on by ω [rad/s] → [N] */
  readonly pull: (speed: number) => Pull;
}

/** φ, Q [m³/s] and Δp [Pa] where rotor and leak meet at one speed. */
function metAt({ machine, air }: Assembly, leak: Leak, speed: number) {
  const { rotor, area, radius } = machine;
  const tipSpeed = speed * radius;
  const pressureAt = (phi: number) =>
    Math.max(0, 0.5 * air.density * tipSpeed ** 2 * psiAt(machine, phi, tipSpeed));
  const excess = (phi: number) => leakFlow(leak, air, pressureAt(phi)) - phi * area * tipSpeed;
  const phi = isSealed(leak) ? 0 : (phiAtSpeed(rotor, excess) ?? 0);
  return { phi, flow: phi * area * tipSpeed, pressure: pressureAt(phi) };
}

function ducted(input: PredictInput): Turning {
  const assembly = assemble(input);
  const { machine, air, leak } = assembly;
  const { rotor, area, radius } = machine;
  const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
  const suctionOver = (speed: number, of: { skirt: PredictInput["skirt"]; leak: Leak }) => {
    const { pressure, flow } = metAt(assembly, of.leak, speed);
    return suctionAt({ skirt: of.skirt, vehicle: input.vehicle }, { leak: of.leak, air }, pressure, flow);
  };
  return {
    torque: (speed) => {
      const lambda = evaluatePolynomial(rotor.lambda, metAt(assembly, leak, speed).phi);
      return 0.5 * air.density * area * radius ** 3 * speed ** 2 * lambda;
    },
    pull: (speed) =>
      pullOf(suctionOver(speed, { skirt: input.skirt, leak }), rideHeight, (gap) => {
        const skirt = skirtAtGap(input.skirt, gap);
        return suctionOver(speed, { skirt, leak: skirtLeak(skirt, air) });
      }),
  };
}

/**
 * What a build's rotor does at any speed.
 *
 *     ducted: Δp and Q where rotor and leak meet at ω, M = ½ρA(D/2)³ω²·λ(φ);  propeller: T and P/ω
 *
 * @param input - build, all SI [-]
 * @returns torque [N·m] and pull [N] by speed [rad/s]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid for a flow that follows the speed at once. Source: docs/method/power-cut.md
 */
export function turningOf(input: AnyPredictInput): Turning {
  if (!isPropeller(input)) return ducted(input);
  const air = airFrom(input.air);
  return {
    torque: (speed) => thrustAndPower(input.rotor, air, speed).power / speed,
    pull: (speed) => rigidPull(Math.max(0, thrustAndPower(input.rotor, air, speed).thrust)),
  };
}
