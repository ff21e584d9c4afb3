/** What a printed part is made of, across its layers. */
export interface Material {
  /** as shown: "PLA, printed" */
  readonly name: string;
  /** ρ_m [kg/m³] */
  readonly density: number;
  /** ν [-] */
  readonly poissonRatio: number;
  /** tensile, across printed layers, at room temperature [Pa] */
  readonly strength: number;
  readonly source: string;
}

const COMMON = "common practice, no source; values from memory, low in their spread";

/** Usual rotor materials. None is a measurement of anyone's print: wherever one is used, the figure is marked estimated. */
export const MATERIALS = {
  pla: { name: "PLA, printed", density: 1240, poissonRatio: 0.36, strength: 25e6, source: COMMON },
  petg: { name: "PETG, printed", density: 1270, poissonRatio: 0.38, strength: 22e6, source: COMMON },
  abs: { name: "ABS or ASA, printed", density: 1050, poissonRatio: 0.37, strength: 15e6, source: COMMON },
  nylon: {
    name: "Polyamide 12, sintered",
    density: 1000,
    poissonRatio: 0.4,
    strength: 35e6,
    source: COMMON,
  },
  resin: { name: "Tough resin, cured", density: 1150, poissonRatio: 0.4, strength: 35e6, source: COMMON },
} as const satisfies Readonly<Record<string, Material>>;

export type MaterialKey = keyof typeof MATERIALS;
export const MATERIAL_KEYS = Object.keys(MATERIALS) as [MaterialKey, ...MaterialKey[]];
