import { evaluatePolynomial } from "../numeric/polynomial.ts";
import { formatFixed } from "../units/format.ts";
import { moistAirDensity } from "./air.ts";
import { type Assembly, assemble, suctionAt } from "./assembly.ts";
import { circuitWorkings, currentWorking, torqueWorking, turningWorkings } from "./circuitWorkings.ts";
import { readingOf } from "./fanlaws/coefficients.ts";
import { leakWorkings } from "./leakWorkings.ts";
import { marginWorkings, weightWorking } from "./marginWorking.ts";
import type { Point, PredictInput, Prediction } from "./predict.ts";
import { pullAfter } from "./pullByGap.ts";
import { lipShare, lipShareWords } from "./restriction/leak.ts";
import { explain, type Row, subscript, type Working, workedOut } from "./working.ts";

/** @returns working of the air's density */
export function airWorking({ air }: Pick<PredictInput, "air">): Working {
  return explain(
    {
      title: "density of the air",
      equation: "ρ = p·Mₐ/(Z·R·T)·[1 − x_v(1 − M_v/Mₐ)]",
      inputs: {
        temperature: ["T", "temperature", "K"],
        pressure: ["p", "pressure of the air", "Pa", "airPressure"],
        humidity: ["h", "relative humidity", ""],
      },
      output: ["ρ", "kg/m³"],
      source: "CIPM-2007: Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149–155; docs/method/air.md",
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
      output: ["Δp", "Pa", "pressure"],
      source: "definition of ψ; fan laws at one φ (Eck; ISO 13348); docs/method/fan-laws.md",
      assumptions: ["Speed and flow are those at which rotor and leak, motor and rotor agree."],
      evaluate: ({ phi, psi, ...state }) => readingOf({ phi, psi, lambda: null }, state).pressure,
    },
    { density, diameter, speed: point.speed, phi: point.phi, psi: point.psi },
  );
}

const RAISED = ["", "φ", "φ²", "φ³", "φ⁴"];

/** The fitted curve at the point's φ; of another size than tested, times the size law's factor. */
function curveWorking({ rotor }: PredictInput, point: Point): Working {
  const terms = rotor.psi.map((_, power) => `a${subscript(power)}${RAISED[power] ?? `φ^${power}`}`);
  const plain = evaluatePolynomial(rotor.psi, point.phi);
  const factor = point.psi / plain;
  const scaled = rotor.sizeCorrection !== null;
  const coefficients = rotor.psi.map(
    (a, power): Row => [[`a${subscript(power)}`, `coefficient of φ to the power of ${power}`, ""], a],
  );
  const factors: Row[] = scaled
    ? [[["s", "size law: efficiency here over that of the size tested", ""], factor]]
    : [];
  return workedOut(
    {
      title: "pressure coefficient of the rotor",
      equation: scaled ? `ψ = s·(${terms.join(" + ")})` : `ψ = ${terms.join(" + ")}`,
      output: ["ψ", ""],
      source: scaled
        ? "least squares over the curve tests; Ackeret's size law; docs/method/fits/rotor.md"
        : "least squares over the curve tests; docs/method/fits/rotor.md",
      assumptions: [
        point.extrapolated
          ? "Beyond the tested flows: the curve is carried on."
          : `The curve was tested from φ ${formatFixed(rotor.phiMin, 3)} to ${formatFixed(rotor.phiMax, 3)}.`,
        "Rotors of one family have one curve at every speed.",
      ],
    },
    [[["φ", "flow coefficient", ""], point.phi], ...coefficients, ...factors],
    scaled ? plain * factor : plain,
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
        pressure: ["Δp", "suction in the cavity", "Pa", "pressure"],
        flow: ["Q", "flow", "m³/s"],
        area: ["A", "area inside the lip", "m²"],
        perimeter: ["P", "length of the lip", "m"],
        land: ["ℓ", "width of the lip", "m"],
        factor: ["κ", "pull factor: what pulls measure over what the model says", ""],
        share: ["σ", "share of the suction that acts under the lip", ""],
      },
      output: ["F", "N"],
      source: "pressure times area; fall of pressure under the land; docs/method/holding.md",
      assumptions: ["One pressure in the whole cavity; what that leaves out is in the pull factor."],
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
 * @returns workings in the order in which the figures follow from each other, then what they take in; none where there is no operating point
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
  const margins = marginWorkings(input, pull, angles);
  return [
    airWorking(input),
    pressureWorking(input, point, air.density),
    ...leakWorkings(leak, air, point.pressure),
    currentWorking(input, point),
    torqueWorking(input, point),
    suctionWorking(input, point, assembly),
    ...margins,
    weightWorking(input),
    curveWorking(input, point),
    ...turningWorkings(input, point),
    ...circuitWorkings(input),
  ];
}
