import type { Gear } from "../../model/parts/gear.ts";
import type { Motor } from "../../model/parts/motor.ts";
import type { Pack } from "../../model/parts/pack.ts";
import type { Rotor } from "../../model/parts/rotor.ts";
import type { Skirt } from "../../model/parts/skirt.ts";
import type { PartDimension } from "../../model/stacks.ts";
import { rotorHeight } from "../rotorSize.ts";

/** Parts of a build that stand in a stack. */
export type StackedPart = "motor" | "rotor" | "pack" | "skirt" | "gear";

/** What the parts of a build are, as far as it has them. */
export interface StackedParts {
  readonly motor: Motor | null;
  readonly rotor: Rotor | null;
  /** of the rotor [m] */
  readonly diameter: number;
  readonly pack: Pack | null;
  readonly skirt: Skirt | null;
  readonly gear: Gear | null;
}

interface PartSize {
  readonly part: StackedPart;
  /** as a list of choices says it: "Motor: length of its body" */
  readonly words: string;
  /** @returns the size [m]; null where the record doesn't say */
  readonly of: (parts: StackedParts) => number | null;
}

/** From this height on, over its diameter, the way round a round inlet's edge is as wide as the inlet itself [-]: π d h = π d²/4. */
const INLET_AIR = 1 / 4;

/** Every size that a part brings. */
export const PART_SIZES: Readonly<Record<PartDimension, PartSize>> = {
  "motor.length": {
    part: "motor",
    words: "Motor: length of its body",
    of: ({ motor }) => motor?.length ?? null,
  },
  "motor.diameter": {
    part: "motor",
    words: "Motor: diameter of its body",
    of: ({ motor }) => motor?.diameter ?? null,
  },
  "rotor.height": {
    part: "rotor",
    words: "Rotor: height",
    of: ({ rotor, diameter }) => rotor && rotorHeight(rotor, diameter),
  },
  "rotor.diameter": {
    part: "rotor",
    words: "Rotor: diameter",
    of: ({ rotor, diameter }) => rotor && diameter,
  },
  "rotor.inletAir": {
    part: "rotor",
    words: "Rotor: room before its inlet, a quarter of the inlet's diameter",
    of: ({ rotor, diameter }) => (rotor?.geometry ? INLET_AIR * rotor.geometry.inletRatio * diameter : null),
  },
  "pack.height": { part: "pack", words: "Pack: height", of: ({ pack }) => pack?.height ?? null },
  "skirt.height": { part: "skirt", words: "Skirt: height", of: ({ skirt }) => skirt?.height ?? null },
  "gear.wheelRadius": {
    part: "gear",
    words: "Running gear: radius of its wheels",
    of: ({ gear }) => gear?.wheelRadius ?? null,
  },
  "gear.sag": {
    part: "gear",
    words: "Running gear: how far the tyres give",
    of: ({ gear }) => gear?.sag ?? null,
  },
};
