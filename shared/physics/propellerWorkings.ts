import { airFrom } from "./air.ts";
import { circuitWorkings, currentWorking, torqueWorking, turningWorkings } from "./circuitWorkings.ts";
import { rigidPull } from "./hold/pull.ts";
import { marginWorkings, weightWorking } from "./marginWorking.ts";
import type { PropellerPoint, PropellerPredictInput, PropellerPrediction } from "./propeller.ts";
import { bladeReynolds, thrustAndPower } from "./propellerLaw.ts";
import { explain, type Working } from "./working.ts";
import { airWorking } from "./workings.ts";

function reynoldsWorking({ rotor, air: weather }: PropellerPredictInput, { speed }: PropellerPoint): Working {
  const air = airFrom(weather);
  return explain(
    {
      title: "Reynolds number of the blade",
      equation: "Re = ρ·(0.75·ωD/2)·c/μ",
      inputs: {
        density: ["ρ", "density of the air", "kg/m³"],
        viscosity: ["μ", "viscosity of the air", "Pa·s"],
        diameter: ["D", "propeller diameter", "m"],
        chord: ["c", "chord at 75 % radius", "m"],
        speed: ["ω", "speed", "rad/s"],
      },
      output: ["Re", ""],
      source: "common practice, no source, for the radius; docs/method/fits/propeller.md",
      evaluate: ({ diameter, chord }) => bladeReynolds({ diameter, chord }, air, speed),
    },
    {
      density: air.density,
      viscosity: air.viscosity,
      diameter: rotor.diameter,
      chord: rotor.chord,
      speed,
    },
  );
}

function thrustWorking({ rotor, air: weather }: PropellerPredictInput, { speed }: PropellerPoint): Working {
  const air = airFrom(weather);
  return explain(
    {
      title: "thrust",
      equation: "T = ρn²D⁴·[C_T + c_T·ln(Re/Re_ref)],  n = ω/2π",
      inputs: {
        density: ["ρ", "density of the air", "kg/m³"],
        diameter: ["D", "propeller diameter", "m"],
        speed: ["ω", "speed", "rad/s"],
        level: ["C_T", "thrust coefficient at Re_ref", ""],
        drift: ["c_T", "its drift per ln Re", ""],
        reynolds: ["Re", "Reynolds number of the blade", ""],
        reference: ["Re_ref", "where the coefficients are stated", ""],
      },
      output: ["T", "N"],
      source: "definition of C_T; fitted to the thrust tests, docs/method/fits/propeller.md",
      evaluate: ({ diameter }) => thrustAndPower({ ...rotor, diameter }, air, speed).thrust,
    },
    {
      density: air.density,
      diameter: rotor.diameter,
      speed,
      level: rotor.thrust[0],
      drift: rotor.thrust[1],
      reynolds: bladeReynolds(rotor, air, speed),
      reference: rotor.referenceReynolds,
    },
  );
}

/**
 * Working of a propeller's prediction, from the air to the margins.
 *
 *     each step by the function that the prediction itself calls
 *
 * @param input - what was predicted, SI
 * @param prediction - its answer
 * @param angles - attitudes whose margins are worked out [°]
 * @returns workings in the order in which the figures follow from each other; none where the propeller stands still
 * @throws {OutOfRangeError} as {@link predictPropeller}
 *
 * Valid as the prediction. Source: docs/method/fits/propeller.md
 */
export function propellerWorkings(
  input: PropellerPredictInput,
  prediction: PropellerPrediction,
  angles: readonly number[],
): Working[] {
  const { point, suction } = prediction;
  if (!point) return [];
  return [
    airWorking(input),
    currentWorking(input, point),
    torqueWorking(input, point, "the propeller takes C_P·ρn²D⁵/2π, the same"),
    reynoldsWorking(input, point),
    thrustWorking(input, point),
    ...marginWorkings(input, rigidPull(suction), angles),
    weightWorking(input),
    ...turningWorkings(input, point),
    ...circuitWorkings(input),
  ];
}
