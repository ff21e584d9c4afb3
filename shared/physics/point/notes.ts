import { formatDigits, formatQuantity } from "../../units/format.ts";
import { CELSIUS_ZERO } from "../constants.ts";
import { hasStallHump } from "../fanlaws/stallHump.ts";
import type { Note } from "../note.ts";
import type { Crossing } from "../operatingPoint.ts";
import { efficiencyNotes } from "./efficiencyNotes.ts";
import { type Machine, overcomesFriction } from "./machine.ts";
import { balancedSpeed } from "./speed.ts";

/** Winding temperatures above this end the varnish of common wire (class 155 of IEC 60085) [K]. */
export const WINDING_ALARM = CELSIUS_ZERO + 155;
const MILLINEWTONS = 1000;
/** A tested range that ends below this φ is no range: a curve estimated from its geometry, or blocked readings alone [-]. */
const NOTHING_TESTED = 1e-6;

function noPoint(machine: Machine, crossings: readonly Crossing[]): Note {
  if (!overcomesFriction(machine)) {
    const message =
      "The motor can't overcome its own friction at this voltage: the rotor stands still and nothing is held.";
    return { code: "motor-stalled", message };
  }
  if (crossings.length === 0 && balancedSpeed(machine, 0).speed === 0) {
    const message =
      "The motor turns while it is cold, but its winding settles so hot that it can't overcome its own friction any more: the rotor stops and nothing is held.";
    return { code: "motor-stalled", message };
  }
  const message =
    crossings.length > 0
      ? "Rotor and leak meet, but at no point that would last: the fan hunts."
      : "Rotor and leak meet nowhere on the rotor's curve.";
  return { code: "no-stable-point", message };
}

function severalPoints(
  stable: readonly Crossing[],
  point: Crossing,
  suctionOf: (crossing: Crossing) => number,
): Note[] {
  const others = stable.filter((crossing) => crossing !== point);
  if (others.length === 0) return [];
  const pulls = others.map((crossing) => `${(suctionOf(crossing) * MILLINEWTONS).toFixed(0)} mN`).join(", ");
  const message = `The rotor has ${stable.length} stable operating points and may drop into stall; there it would pull ${pulls}, against ${(suctionOf(point) * MILLINEWTONS).toFixed(0)} mN.`;
  return [{ code: "may-stall", message }];
}

function curveNotes({ rotor }: Machine): Note[] {
  const stalls = hasStallHump(rotor.psi, rotor.psiCovariance ?? [], rotor.phiMax);
  const message = "The rotor's pressure rises with flow somewhere on its curve: it can stall there.";
  return [...(stalls ? [{ code: "stall-hump", message }] : []), ...efficiencyNotes(rotor)];
}

function windingNotes(machine: Machine, point: Crossing): Note[] {
  if (machine.motor.thermalResistance === null) {
    const message =
      "The winding is taken cold, at 20 °C: its thermal resistance isn't known. Warm, it draws less and pulls a little less.";
    return [{ code: "winding-cold", message }];
  }
  if (!(point.windingTemperature > WINDING_ALARM)) return [];
  const [settles, common] = [point.windingTemperature, WINDING_ALARM].map((kelvin) =>
    formatQuantity(kelvin, "temperature", { decimals: 0 }),
  );
  const message = `The winding would settle at ${settles}, above the ${common} of common enamelled wire: it burns if left running.`;
  return [{ code: "winding-too-hot", message }];
}

/**
 * What a reader should know about an operating point.
 *
 *     no point, several points, stall hump, extrapolation, cold or too hot winding, efficiency above 1
 *
 * @param machine - rotor, motor, pack and supply
 * @param crossings - every crossing, by rising flow
 * @param point - the operating point, which is answered with; null: none
 * @param suction - F_s there [N]
 * @param suctionOf - F_s at any crossing [N]
 * @returns notes [-]
 *
 * Valid for any machine. Source: docs/method/operating-point.md
 */
export function pointNotes(
  machine: Machine,
  crossings: readonly Crossing[],
  point: Crossing | null,
  suction: number,
  suctionOf: (crossing: Crossing) => number,
): Note[] {
  if (!point) return [noPoint(machine, crossings), ...curveNotes(machine)];
  const { phiMin, phiMax } = machine.rotor;
  const notes = [
    ...severalPoints(
      crossings.filter((c) => c.stable),
      point,
      suctionOf,
    ),
    ...curveNotes(machine),
  ];
  if (point.phi < phiMin || point.phi > phiMax) {
    const message =
      phiMax > NOTHING_TESTED
        ? `The operating point lies at φ = ${formatDigits(point.phi, 3)}, beyond the tested range ${formatDigits(phiMin, 3)} to ${formatDigits(phiMax, 3)}: extrapolated.`
        : "No flow of the rotor's curve was tested: the operating point is an estimate.";
    notes.push({ code: "extrapolated", message });
  }
  if (suction < 0) {
    const message = "The jet pushes the vehicle off harder than the cavity holds it.";
    notes.push({ code: "pushed-off", message });
  }
  return [...notes, ...windingNotes(machine, point)];
}
