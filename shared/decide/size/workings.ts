import { workingsOfAny } from "../../physics/anyWorkings.ts";
import { packResistance } from "../../physics/pack.ts";
import { predictAny } from "../../physics/predictAny.ts";
import { windingResistance } from "../../physics/winding.ts";
import { type Row, type Working, workedOut } from "../../physics/working.ts";
import { burstFactorWorking } from "../limits/workings.ts";
import { sizedBuild } from "./build.ts";
import type { Duty } from "./duty.ts";
import type { SizeBuild, WantedHold } from "./input.ts";
import type { SizeRow } from "./row.ts";

/** One size that a winding does, and what was asked for. */
export interface SizeFigures {
  /** of the family at that size, SI */
  readonly build: SizeBuild;
  readonly hold: WantedHold;
  /** the pull that is wanted, the gap as set [N] */
  readonly pull: number;
  /** null with a propeller */
  readonly duty: Duty | null;
  /** from {@link sizesOf} */
  readonly row: SizeRow;
}

const SIZE = "docs/method/size.md";

function needWorkings({ hold, pull, duty }: SizeFigures): Working[] {
  const need = workedOut(
    {
      title: "pull that is wanted",
      equation: "F = margin·F_needed",
      output: ["F", "N"],
      source: `statics of a body held by suction; docs/method/holding.md; ${SIZE}`,
      assumptions: [`A rigid vehicle, ${hold.mode}.`],
    },
    [
      [["margin", "margin that is wanted", ""], hold.margin],
      [["F_needed", "pull needed there", "N"], pull / hold.margin],
    ],
    pull,
  );
  if (!duty) return [need];
  const air = workedOut(
    {
      title: "power in the air",
      equation: "P_air = Q·Δp",
      output: ["P_air", "W"],
      source: `definition; ${SIZE}`,
      assumptions: ["No fan does it with less."],
    },
    [
      [["Q", "flow through everything that leaks", "m³/s"], duty.flow],
      [["Δp", "least suction at which the pull is reached", "Pa", "pressure"], duty.pressure],
    ],
    duty.airPower,
  );
  return [need, air];
}

function windingWorking({ build, row }: SizeFigures): Working | null {
  const { speed, shaftPower, kv, resistance, windingTemperature: warm } = row;
  if (speed === null || shaftPower === null || kv === null || resistance === null) return null;
  const { motor, pack, supply } = build;
  const inside = packResistance(pack);
  const rows: Row[] = [
    [["ω", "speed", "rad/s"], speed],
    [
      ["M", "torque of rotor and friction", "N·m"],
      shaftPower / speed + motor.frictionTorque + motor.viscousTorque * speed,
    ],
    [["K_m", "strength of the motor, k/√R₂₀, in N·m/√W", ""], motor.motorConstant],
    [
      ["V", "driving voltage, δ(V_oc − R_b·I_aux)", "V"],
      supply.duty * (pack.series * pack.openCircuitVoltage - inside * supply.auxCurrent),
    ],
    [["R", "circuit, R_d + δ²R_b", "Ω"], supply.driverResistance + supply.duty ** 2 * inside],
    [
      ["w", "resistance of the warm winding over that at 20 °C", ""],
      warm === null ? 1 : windingResistance(1, warm),
    ],
  ];
  return workedOut(
    {
      title: "winding that is wanted",
      equation: "K_v = 60/(2π·k),  k = [V + √(V² − 4·B·R·M)]/(2·B),  B = ω + w·M/K_m²",
      output: ["K_v", "rpm/V"],
      source: `torque balance of one equivalent DC machine; ${SIZE}`,
      assumptions: [
        "Copper fills the same space at every winding, so that the motor's strength stays.",
        "Where the running gear gives, the winding is the one that brings the margin at the gap it leaves.",
      ],
    },
    rows,
    kv,
  );
}

function lastingWorkings({ row }: SizeFigures): Working[] {
  const { burstFactor, speed, holdTime, packCurrent } = row;
  const burst = burstFactor === null || speed === null ? [] : [burstFactorWorking(burstFactor, speed)];
  if (holdTime === null || packCurrent === null) return burst;
  const time = workedOut(
    {
      title: "time that it does so",
      equation: "t = N_p·C·∫ dz/I_b(V_oc(z)),  from the charge at its voltage to a full cell",
      output: ["t", "s"],
      source: `definition of capacity; ${SIZE}`,
      assumptions: ["1/I_b a parabola in V_oc through three operating points."],
    },
    [[["I_b", "current out of the pack at the end", "A"], packCurrent]],
    holdTime,
  );
  return [...burst, time];
}

function temperatureWorking({ build, row }: SizeFigures): Working[] {
  const { windingTemperature, windingHeat } = row;
  const { thermalResistance } = build.motor;
  if (windingTemperature === null || windingHeat === null || thermalResistance === null) return [];
  return [
    workedOut(
      {
        title: "settled temperature of the winding",
        equation: "T = T_a + R_th·P_copper",
        output: ["T", "K"],
        source: "heat balance in steady state; IEC 60028 for copper; docs/method/limits.md",
      },
      [
        [["T_a", "temperature of the air", "K"], build.air.temperature],
        [["R_th", "thermal resistance, winding to air", "K/W"], thermalResistance],
        [["P_copper", "heat of the winding, I²·R_m", "W"], windingHeat],
      ],
      windingTemperature,
    ),
  ];
}

/**
 * How one size's figures came about.
 *
 *     need → duty → winding, then the prediction of the build put back
 *
 * @param figures - of a size that a winding does, SI
 * @returns workings in the order in which the figures follow from each other [SI]; none where no winding does it
 *
 * Valid and source: as {@link sizesOf}
 */
export function sizeWorkings(figures: SizeFigures): Working[] {
  const { build, hold, row } = figures;
  const { kv, resistance, diameter } = row;
  const winding = windingWorking(figures);
  if (!winding || kv === null || resistance === null) return [];
  const back = sizedBuild(build, diameter, { kv, resistance });
  const angles = hold.angle === "worst" ? [] : [hold.angle];
  const prediction = predictAny(back, angles);
  const at = hold.angle === "worst" ? [prediction.worst[hold.mode].angle] : angles;
  return [
    ...needWorkings(figures),
    winding,
    ...lastingWorkings(figures),
    ...temperatureWorking(figures),
    ...workingsOfAny(back, prediction, at),
  ];
}
