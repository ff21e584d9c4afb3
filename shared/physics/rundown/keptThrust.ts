import { airFrom } from "../air.ts";
import { rigidPull } from "../hold/pull.ts";
import { assembleCircuit } from "../point/machine.ts";
import { turningForThrust } from "../point/turning.ts";
import { type PropellerPredictInput, predictPropeller } from "../propeller.ts";
import type { Draw } from "./drawn.ts";
import { keepingAt, throttled } from "./throttled.ts";

/**
 * A propeller whose controller keeps its thrust while it can, asked at falling voltages.
 *
 *     ω and M by {@link turningForThrust}, I = (M + M_c + M_v·ω)/k_t, δ by `keptDuty`;  full throttle where δ > 1 or there is none
 *
 * @param input - build at full throttle, its cell full [SI]
 * @param thrust - T to keep [N], > 0
 * @param full - the same build at full throttle all the time
 * @returns what it draws [A, rad/s, K, -] and how it presses [N], by voltage [V] and winding temperature [K]
 * @throws {NoConvergenceError} where its coefficients reach that thrust at no speed
 *
 * Valid for a controller that is quick beside the run. Source: docs/method/run-down.md
 */
export function keptThrustDraw(input: PropellerPredictInput, thrust: number, full: Draw): Draw {
  const circuit = assembleCircuit(input);
  const keeping = keepingAt(turningForThrust(input.rotor, airFrom(input.air), thrust), input, circuit);
  return {
    circuit: full.circuit,
    at: (cellVoltage, now) => {
      const found = throttled(input, circuit, keeping, cellVoltage, now);
      if (!found || found.duty > 1)
        return { ...full.at(cellVoltage, now), duty: 1, spare: found ? 1 - found.duty : -1 };
      const { duty, state } = found;
      const held = { pressure: null, suction: thrust, pull: rigidPull(thrust), works: true };
      return { ...state, ...held, duty, spare: 1 - duty };
    },
    notesAt: (cellVoltage) => {
      const duty = Math.min(1, throttled(input, circuit, keeping, cellVoltage, undefined)?.duty ?? 1);
      const pack = { ...input.pack, openCircuitVoltage: cellVoltage };
      return predictPropeller({ ...input, supply: { ...input.supply, duty }, pack }, []).warnings;
    },
  };
}
