import type { BuildMarkWord } from "./marks.ts";

/** What a mark beside a figure means, in one line each. */
export const MARK_MEANINGS: Readonly<Record<BuildMarkWord, string>> = {
  contradicted:
    "Tests speak against each other or against the model. Repeat one before you trust the figure.",
  "efficiency above 1":
    "The curve gives out more power than it takes in, so pressure and power readings don't belong together.",
  extrapolated: "Beyond what was tested: the fitted curve is carried on.",
  estimated: "A guess, a published figure or one worked out from a drawing; no test of your own.",
  scaled: "Carried from a tested size or speed to this one by the fan laws.",
  "two-point": "From a blocked and an open reading alone: a dip between them stays unseen.",
  stated: "As its maker or you stated it; no test of your own.",
};

/** Symbols and words of the trade, in one line each. */
export const TERMS = {
  φ: "Flow coefficient φ: flow over the disc's area times the tip speed.",
  ψ: "Pressure coefficient ψ: twice the pressure over air density times tip speed squared.",
  λ: "Power coefficient λ: shaft power over half of air density times the disc's area times tip speed cubed.",
  η: "Efficiency η: air power, flow times pressure, over shaft power.",
  κ: "Pull factor κ: pull over suction times the skirt's area; 1 where the whole area is at full suction.",
  μ: "Friction coefficient μ: the force at which it slides over the force that presses it on.",
  K_v: "Speed constant K_v: speed a volt of the motor without load.",
  C_T: "Thrust coefficient C_T: thrust over air density, turns a second squared and diameter to the fourth.",
  C_P: "Power coefficient C_P: shaft power over air density, turns a second cubed and diameter to the fifth.",
  margin: "Pull made over pull needed. Below 1 it lets go.",
  "chance of holding":
    "Share of the samples, each with every uncertain number drawn anew, in which the pull is enough.",
  suction: "How far the pressure under the skirt lies below the air outside.",
  pull: "The force that suction makes on the vehicle, as the mass that weighs as much.",
  gap: "Height of the skirt's lip above the surface.",
  "operating point": "Flow and suction at which rotor and leak agree: where it settles.",
  "blocked pressure": "Suction with no flow: a plate over the inlet.",
  "open flow": "Flow with nothing in its way.",
  bracket: "A load that held and the next one that let go: the pull lies between.",
} as const;

/** A term of the glossary. */
export type Term = keyof typeof TERMS;
