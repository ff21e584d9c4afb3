import type { Fluid } from "./air.ts";
import { type LeakLaw, leakFlow } from "./point/leakLaw.ts";
import { gapFlow, type LipGap } from "./restriction/lipGap.ts";
import type { MeasuredLeak } from "./restriction/measuredLeak.ts";
import { explain, type Working } from "./working.ts";

type Description = readonly [symbol: string, meaning: string, unit: string];

/** One law of a leak: its term, its own relation where it has one, the numbers put in, where it comes from. */
interface Part {
  readonly term: string;
  readonly law?: string;
  readonly inputs: readonly (readonly [key: string, description: Description, value: number])[];
  readonly source: string;
}

function gapPart(gap: LipGap, air: Fluid, pressure: number): Part {
  const { perimeter, height, land, lossSum } = gap;
  return {
    term: "P·h·v",
    law: "Δp = ½ρv²·[K + f·ℓ/(2h)],  f = max(96/Re, 0.3164/Re^¼),  Re = 2ρvh/μ",
    inputs: [
      ["perimeter", ["P", "length of the lip", "m"], perimeter],
      ["height", ["h", "gap and roughness together", "m"], height],
      ["land", ["ℓ", "width of the lip", "m"], land],
      ["lossSum", ["K", "losses at entry and exit", ""], lossSum],
      ["viscosity", ["μ", "viscosity of the air", "Pa·s"], air.viscosity],
      ["velocity", ["v", "of the air in the gap", "m/s"], gapFlow(gap, air, pressure) / (perimeter * height)],
    ],
    source: "lip gap: plane Poiseuille flow, Blasius",
  };
}

/** The flow through the gap that a leak test measured, in the gap's place. */
function measuredPart({ coefficient, exponent }: Pick<MeasuredLeak, "coefficient" | "exponent">): Part {
  return {
    term: "C_L·Δp^x",
    inputs: [
      ["coefficient", ["C_L", "from leak tests, at this air", "m³/(s·Pa^x)"], coefficient],
      ["exponent", ["x", "from leak tests", ""], exponent],
    ],
    source: "measured leak: form of ISO 9972, fitted to the leak tests",
  };
}

function openingsPart(openArea: number): Part {
  return {
    term: "Σ C_d·A·√(2Δp/ρ)",
    inputs: [["openArea", ["Σ C_d·A", "openings", "m²"], openArea]],
    source: "openings: orifice equation",
  };
}

/** @returns the laws that the leak is made of, none where nothing leaks */
function partsOf({ air, gap, measured, openArea }: LeakLaw, pressure: number): Part[] {
  return [
    ...(gap ? [gapPart(gap, air, pressure)] : []),
    ...(measured ? [measuredPart(measured)] : []),
    ...(openArea > 0 ? [openingsPart(openArea)] : []),
  ];
}

/**
 * Working of the flow through a leak at a pressure, by the laws that the leak is made of.
 *
 *     Q = the terms of the laws in use, added; 0 where nothing leaks
 *
 * @param leak - of the prediction [SI]
 * @param pressure - suction [Pa], ≥ 0
 * @returns equation, inserted values and flow [m³/s]
 * @throws {OutOfRangeError} on a negative pressure
 *
 * Valid as the laws. Source: docs/method/restriction.md
 */
export function leakWorking(leak: LeakLaw, pressure: number): Working {
  const parts = partsOf(leak, pressure);
  const inputs = parts.flatMap((part) => part.inputs);
  const terms = parts.map(({ term }) => term).join(" + ") || "0: nothing leaks";
  const laws = parts.flatMap(({ law }) => law ?? []);
  return explain<string>(
    {
      title: "flow through the leak at that pressure",
      equation: [`Q = ${terms}`, ...laws].join(";  "),
      inputs: {
        pressure: ["Δp", "suction in the cavity", "Pa"],
        density: ["ρ", "density of the air", "kg/m³"],
        ...Object.fromEntries(inputs.map(([key, description]) => [key, description])),
      },
      output: ["Q", "m³/s"],
      source: parts.map(({ source }) => source).join("; ") || "definition of a sealed skirt",
      evaluate: () => leakFlow(leak, pressure),
    },
    {
      pressure,
      density: leak.air.density,
      ...Object.fromEntries(inputs.map(([key, , value]) => [key, value])),
    },
  );
}
