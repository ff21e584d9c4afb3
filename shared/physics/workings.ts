import { moistAirDensity } from "./air.ts";
import { type Assembly, assemble, suctionAt } from "./assembly.ts";
import { readingOf } from "./fanlaws/coefficients.ts";
import { leakWorkings } from "./leakWorkings.ts";
import { marginWorking } from "./marginWorking.ts";
import { shaftTorque } from "./motor.ts";
import { motorCurrent } from "./pack.ts";
import { assembleCircuit } from "./point/machine.ts";
import type { Point, PredictInput, Prediction } from "./predict.ts";
import { pullAfter } from "./pullByGap.ts";
import { lipShare, lipShareWords } from "./restriction/leak.ts";
import { explain, type Working } from "./working.ts";

/** @returns working of the air's density */
export function airWorking({ air }: Pick<PredictInput, "air">): Working {
  return explain(
    {
      title: "density of the air",
      equation: "ρ = p·Mₐ/(Z·R·T)·[1 − x_v(1 − M_v/Mₐ)]",
      inputs: {
        temperature: ["T", "temperature", "K"],
        pressure: ["p", "pressure of the air", "Pa"],
        humidity: ["h", "relative humidity", ""],
      },
      output: ["ρ", "kg/m³"],
      source: "CIPM-2007: Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149–155",
      evaluate: moistAirDensity,
    },
    air,
  );
}

function pressureWorking(input: PredictInput, point: Point, density: number): Working {
  const { diameter } = input.rotor;
  return explain(
    {
      title: "pressure of the rotor",
      equation: "Δp = ½ρu²·ψ(φ),  u = ω·D/2",
      inputs: {
        density: ["ρ", "density of the air", "kg/m³"],
        diameter: ["D", "rotor diameter", "m"],
        speed: ["ω", "speed", "rad/s"],
        phi: ["φ", "flow coefficient", ""],
        psi: ["ψ", "pressure coefficient of the fitted curve, size correction included", ""],
      },
      output: ["Δp", "Pa"],
      source: "definition of ψ; fan laws at one φ (Eck; ISO 13348)",
      evaluate: ({ phi, psi, ...state }) => readingOf({ phi, psi, lambda: null }, state).pressure,
    },
    { density, diameter, speed: point.speed, phi: point.phi, psi: point.psi },
  );
}

type Electrical = Pick<PredictInput, "motor" | "pack" | "supply">;
type Turning = Pick<Point, "speed" | "motorCurrent">;

/** @returns working of the motor's current at a point */
export function currentWorking(input: Electrical, point: Turning): Working {
  const machine = assembleCircuit(input);
  const { supply } = input;
  return explain(
    {
      title: "current of the motor",
      equation: "I = (δV_oc − δR_b·I_aux − k·ω)/(R_m + R_d + δ²R_b)",
      inputs: {
        openCircuitVoltage: ["V_oc", "open-circuit voltage of the pack", "V"],
        duty: ["δ", "throttle", ""],
        packResistance: ["R_b", "pack and wires", "Ω"],
        driverResistance: ["R_d", "speed controller", "Ω"],
        auxCurrent: ["I_aux", "other loads", "A"],
        windingResistance: ["R_m", "winding, warm", "Ω"],
        torqueConstant: ["k", "torque constant, 60/(2πK_v)", "N·m/A"],
        speed: ["ω", "speed", "rad/s"],
      },
      output: ["I", "A"],
      source: "equivalent DC machine; Kirchhoff",
      evaluate: ({ windingResistance, torqueConstant, speed, ...circuit }) =>
        motorCurrent(circuit, windingResistance, torqueConstant, speed),
    },
    {
      ...supply,
      openCircuitVoltage: machine.openCircuitVoltage,
      packResistance: machine.packResistance,
      windingResistance: warmResistance(input, point),
      torqueConstant: machine.torqueConstant,
      speed: point.speed,
    },
  );
}

/** The winding's resistance at the point, from its own current: V_drive − k·ω over I, less the circuit's. */
function warmResistance(input: Electrical, point: Turning): number {
  const machine = assembleCircuit(input);
  const drop = machine.drivingVoltage - machine.torqueConstant * point.speed;
  return drop / point.motorCurrent - machine.circuitResistance;
}

/** @returns working of the torque that the motor leaves for what it turns */
export function torqueWorking(
  { motor }: Electrical,
  point: Turning,
  takes = "the rotor takes λ·½ρAu²·D/2, the same",
): Working {
  return explain(
    {
      title: "torque left for the rotor",
      equation: "M = k·I − M_c − M_v·ω",
      inputs: {
        kv: ["K_v", "speed constant; k = 60/(2πK_v)", "rpm/V"],
        frictionTorque: ["M_c", "constant friction", "N·m"],
        viscousTorque: ["M_v", "friction per speed", "N·m·s"],
        current: ["I", "current", "A"],
        speed: ["ω", "speed", "rad/s"],
      },
      output: ["M", "N·m"],
      source: `equivalent DC machine; ${takes}`,
      evaluate: ({ current, speed, ...constants }) => shaftTorque(constants, current, speed),
    },
    { ...motor, current: point.motorCurrent, speed: point.speed },
  );
}

function suctionWorking(input: PredictInput, point: Point, assembly: Assembly): Working {
  const { skirt } = input;
  const { leak, air } = assembly;
  return explain(
    {
      title: "pull",
      equation: `F = κ·Δp·(A + σ·P·ℓ) + jet,  ${lipShareWords(leak)}`,
      inputs: {
        pressure: ["Δp", "suction in the cavity", "Pa"],
        flow: ["Q", "flow", "m³/s"],
        area: ["A", "area inside the lip", "m²"],
        perimeter: ["P", "length of the lip", "m"],
        land: ["ℓ", "width of the lip", "m"],
        factor: ["κ", "pull factor: what pulls measure over what the model says", ""],
        share: ["σ", "share of the suction that acts under the lip", ""],
      },
      output: ["F", "N"],
      source: "pressure times area; fall of pressure under the land",
      evaluate: ({ pressure, flow }) => suctionAt(input, assembly, pressure, flow),
    },
    {
      pressure: point.pressure,
      flow: point.flow,
      area: skirt.area,
      perimeter: skirt.perimeter,
      land: skirt.land,
      factor: input.vehicle.pullFactor ?? 1,
      share: lipShare(leak, air, point.pressure),
    },
  );
}

/**
 * Working of a prediction, from the air to the margins.
 *
 *     each step by the function that the prediction itself calls
 *
 * @param input - what was predicted, SI
 * @param prediction - its answer
 * @param angles - attitudes whose margins are worked out [°]
 * @returns workings in the order in which the figures follow from each other; none where there is no operating point
 * @throws {OutOfRangeError} as {@link assemble}
 *
 * Valid as the prediction. Source: docs/method/operating-point.md
 */
export function workingsOf(
  input: PredictInput,
  prediction: Prediction,
  angles: readonly number[],
): Working[] {
  const { point } = prediction;
  if (!point) return [];
  const assembly = assemble(input);
  const { leak, air } = assembly;
  const pull = pullAfter(input, prediction);
  const margins = angles.flatMap((angle) => marginWorking(input, pull, angle) ?? []);
  return [
    airWorking(input),
    pressureWorking(input, point, air.density),
    ...leakWorkings(leak, air, point.pressure),
    currentWorking(input, point),
    torqueWorking(input, point),
    suctionWorking(input, point, assembly),
    ...margins,
  ];
}
