import { airFrom } from "../air.ts";
import { rigidPull } from "../hold/pull.ts";
import { assembleCircuit } from "../point/machine.ts";
import { turningForThrust } from "../point/turning.ts";
import { atCell } from "../predictAny.ts";
import { type PropellerPredictInput, predictPropeller } from "../propeller.ts";
import type { Draw } from "./drawn.ts";
import { keepingAt, throttled } from "./throttled.ts";

/**
 * A propeller whose controller keeps its thrust while it can, asked while its cells empty.
 *
 *     ω and M by {@link turningForThrust}, I = (M + M_c + M_v·ω)/k_t, δ by `keptDuty`;  full throttle where δ > 1 or there is none
 *
 * @param input - build at full throttle, its cell full [SI]
 * @param thrust - T to keep [N], > 0
 * @param full - the same build at full throttle all the time
 * @returns what it draws [A, rad/s, K, -] and how it presses [N], by the cells' state and winding temperature [K]
 * @throws {NoConvergenceError} where its coefficients reach that thrust at no speed
 *
 * Valid for a controller that is quick beside the run. Source: docs/method/run-down.md
 */
export function keptThrustDraw(input: PropellerPredictInput, thrust: number, full: Draw): Draw {
  const circuit = assembleCircuit(input);
  const keeping = keepingAt(turningForThrust(input.rotor, airFrom(input.air), thrust), input, circuit);
  return {
    circuit: full.circuit,
    at: (cell, now) => {
      const found = throttled(input, circuit, keeping, cell, now);
      if (!found || found.duty > 1)
        return { ...full.at(cell, now), duty: 1, spare: found ? 1 - found.duty : -1 };
      const { duty, state } = found;
      const held = { pressure: null, suction: thrust, pull: rigidPull(thrust), works: true };
      return { ...state, ...held, duty, spare: 1 - duty };
    },
    notesAt: (cell) => {
      const duty = Math.min(1, throttled(input, circuit, keeping, cell, undefined)?.duty ?? 1);
      return predictPropeller({ ...atCell(input, cell), supply: { ...input.supply, duty } }, []).warnings;
    },
  };
}
