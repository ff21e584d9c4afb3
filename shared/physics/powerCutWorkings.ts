import { STANDARD_GRAVITY } from "./constants.ts";
import { fallingEnergy, fallingSpeed } from "./limits/energy.ts";
import type { PowerCutInput } from "./powerCut.ts";
import type { AnyPrediction } from "./predictAny.ts";
import { explain, type Row, type Working, workedOut } from "./working.ts";

/** What a power cut comes to, by the names that the page gives its attitudes. */
export interface CutFigures {
  /** parked, after the cut [s] */
  readonly held: readonly { readonly name: string; readonly after: number }[];
  /** from switching on until every one of them holds [s]; null: never */
  readonly toHold: number | null;
}

const SOURCE = "angular momentum, integrated; docs/method/power-cut.md";

function coastingRows({ motor, inertia }: PowerCutInput, { point }: AnyPrediction): Row[] {
  const running: Row[] = point
    ? [
        [["ω", "speed at the cut", "rad/s"], point.speed],
        [["M_rotor", "torque that turns the rotor at that speed", "N·m"], point.shaftPower / point.speed],
      ]
    : [];
  return [
    [["J", "inertia of rotor and motor", "kg·m²"], inertia],
    ...running,
    [["M_c", "constant friction of the motor", "N·m"], motor.frictionTorque],
    [["M_v", "its friction per speed", "N·m·s"], motor.viscousTorque],
  ];
}

/**
 * Workings of a power cut.
 *
 *     t = ∫ J dω/M from the speed that just holds to the running one
 *
 * @param input - build with its inertia, SI
 * @param prediction - what it does before the cut
 * @param figures - from {@link powerCut} [s]
 * @returns a working for each attitude that lets go, and for the time from switching on [s]
 *
 * Valid and source: as {@link powerCut}
 */
export function powerCutWorkings(
  input: PowerCutInput,
  prediction: AnyPrediction,
  { held, toHold }: CutFigures,
): Working[] {
  const rows = coastingRows(input, prediction);
  const cuts = held.map(({ name, after }) =>
    workedOut(
      {
        title: `time until it lets go of ${name}`,
        equation: "t = ∫ J·dω/(M_rotor(ω) + M_c + M_v·ω),  from ω_hold to ω",
        output: ["t", "s"],
        source: SOURCE,
        assumptions: [
          "Parked; ω_hold is the speed at which the margin there comes down to 1.",
          "The motor is cut off and not braked; the flow follows the speed at once.",
        ],
      },
      rows,
      after,
    ),
  );
  if (toHold === null) return cuts;
  const start = workedOut(
    {
      title: "time from switching on until it holds",
      equation: "t = ∫ J·dω/(k·I − M_c − M_v·ω − M_rotor(ω)),  from 0 to ω_hold",
      output: ["t", "s"],
      source: SOURCE,
      assumptions: ["Cold and standing, the full voltage at once; ω_hold of the attitude that needs most."],
    },
    rows.filter(([[symbol]]) => symbol !== "ω"),
    toHold,
  );
  return [...cuts, start];
}

/**
 * Workings of the fall from where a vehicle works.
 *
 *     v = √(2gH), E = m·g·H
 *
 * @param mass - m [kg]
 * @param height - H above the ground [m]
 * @returns speed [m/s] and energy [J]
 *
 * Valid and source: as {@link fallingSpeed} and {@link fallingEnergy}
 */
export function fallWorkings(mass: number, height: number): Working[] {
  const above = ["H", "height above the ground where it works", "m"] as const;
  const gravity = ["g", "standard gravity", "m/s²"] as const;
  const source = "energy of a fall without drag; docs/method/limits.md";
  return [
    explain(
      {
        title: "speed at the ground",
        equation: "v = √(2·g·H)",
        inputs: { height: above, gravity },
        output: ["v", "m/s"],
        source,
        evaluate: (given) => fallingSpeed(given.height),
      },
      { height, gravity: STANDARD_GRAVITY },
    ),
    explain(
      {
        title: "energy at the ground",
        equation: "E = m·g·H",
        inputs: { mass: ["m", "mass on board", "kg"], height: above, gravity },
        output: ["E", "J"],
        source,
        evaluate: (given) => fallingEnergy(given.mass, given.height),
      },
      { mass, height, gravity: STANDARD_GRAVITY },
    ),
  ];
}
