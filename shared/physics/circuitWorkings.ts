import { shaftTorque, torqueConstant } from "./motor.ts";
import { motorCurrent, packCurrent, packResistance } from "./pack.ts";
import { assembleCircuit } from "./point/machine.ts";
import type { Point, PredictInput } from "./predict.ts";
import { explain, type Working, workedOut } from "./working.ts";

type Electrical = Pick<PredictInput, "motor" | "pack" | "supply">;
type Turning = Pick<Point, "speed" | "motorCurrent">;
type Drawing = Turning & Pick<Point, "shaftPower" | "packCurrent" | "packVoltage">;

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
      source: "equivalent DC machine; Kirchhoff; docs/method/motor.md",
      assumptions: ["A steady state; the winding as warm as it stands here."],
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
      source: `equivalent DC machine; ${takes}; docs/method/motor.md`,
      evaluate: ({ current, speed, ...constants }) => shaftTorque(constants, current, speed),
    },
    { ...motor, current: point.motorCurrent, speed: point.speed },
  );
}

/** @returns working of the speed that the solver found, by the torques that are alike there */
function speedWorking({ motor }: Electrical, { speed, motorCurrent: current, shaftPower }: Drawing): Working {
  return workedOut(
    {
      title: "speed",
      equation: "ω where M_motor = M_rotor, and rotor and leak have one pressure",
      output: ["ω", "rad/s"],
      source: "torque balance, found by Newton's method; docs/method/operating-point.md",
      assumptions: ["A steady state: nothing speeds up or slows down."],
    },
    [
      [["M_motor", "torque that the motor leaves", "N·m"], shaftTorque(motor, current, speed)],
      [["M_rotor", "torque that turns the rotor at this speed", "N·m"], shaftPower / speed],
    ],
    speed,
  );
}

const LEAVES_PACK = ["I_b", "current out of the pack", "A"] as const;

/** What the pack gives: current, voltage and power at its terminals, all loads included. */
function drawnWorkings(input: Electrical, point: Drawing): Working[] {
  const { openCircuitVoltage, packResistance: resistance } = assembleCircuit(input);
  const { duty, auxCurrent } = input.supply;
  const current = explain(
    {
      title: "current out of the pack",
      equation: "I_b = δ·I + I_aux",
      inputs: {
        duty: ["δ", "throttle", ""],
        current: ["I", "current of the motor", "A"],
        auxCurrent: ["I_aux", "other loads", "A"],
      },
      output: ["I_b", "A"],
      source: "conservation of energy; docs/method/motor.md",
      assumptions: ["A speed controller that averages."],
      evaluate: ({ current: i, ...loads }) => packCurrent(loads, i),
    },
    { duty, auxCurrent, current: point.motorCurrent },
  );
  const voltage = workedOut(
    {
      title: "voltage of the pack under load",
      equation: "V_b = V_oc − R_b·I_b",
      output: ["V_b", "V"],
      source: "Kirchhoff; docs/method/motor.md",
    },
    [
      [["V_oc", "open-circuit voltage of the pack", "V"], openCircuitVoltage],
      [["R_b", "pack and wires", "Ω"], resistance],
      [LEAVES_PACK, point.packCurrent],
    ],
    point.packVoltage,
  );
  const power = workedOut(
    {
      title: "power from the pack",
      equation: "P_b = V_b·I_b",
      output: ["P_b", "W"],
      source: "definition; docs/method/motor.md",
    },
    [
      [["V_b", "voltage of the pack under load", "V"], point.packVoltage],
      [LEAVES_PACK, point.packCurrent],
    ],
    point.packVoltage * point.packCurrent,
  );
  return [current, voltage, power];
}

/** @returns workings of the speed, and of what the pack gives at a point */
export function turningWorkings(input: Electrical, point: Drawing): Working[] {
  return [speedWorking(input, point), ...drawnWorkings(input, point)];
}

/** @returns workings of what feeds the motor's current: the pack's voltage and resistance, the torque constant */
export function circuitWorkings({ motor, pack }: Electrical): Working[] {
  const voltage = explain(
    {
      title: "open-circuit voltage of the pack",
      equation: "V_oc = N_s·V_cell",
      inputs: {
        series: ["N_s", "cells in series", ""],
        cell: ["V_cell", "open-circuit voltage of a cell at its charge", "V"],
      },
      output: ["V_oc", "V"],
      source: "cells in series; docs/method/motor.md",
      evaluate: ({ series, cell }) => series * cell,
    },
    { series: pack.series, cell: pack.openCircuitVoltage },
  );
  const resistance = explain(
    {
      title: "resistance of pack and wires",
      equation: "R_b = N_s·R_cell/N_p + R_wire",
      inputs: {
        series: ["N_s", "cells in series", ""],
        parallel: ["N_p", "cells in parallel", ""],
        cellResistance: ["R_cell", "resistance of a cell", "Ω"],
        wireResistance: ["R_wire", "wires", "Ω"],
      },
      output: ["R_b", "Ω"],
      source: "Kirchhoff; docs/method/motor.md",
      evaluate: packResistance,
    },
    pack,
  );
  const constant = explain(
    {
      title: "torque constant",
      equation: "k = 60/(2πK_v)",
      inputs: { kv: ["K_v", "speed constant", "rpm/V"] },
      output: ["k", "N·m/A"],
      source: "power in is power out of an ideal machine; docs/method/motor.md",
      evaluate: ({ kv }) => torqueConstant(kv),
    },
    { kv: motor.kv },
  );
  return [voltage, resistance, constant];
}
