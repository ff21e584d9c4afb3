import type { StoredStack } from "../shared/model/stacks.ts";

/** As a maker types a stack: what is left out takes its default. */
type Typed<T> = Partial<T> & { readonly name: string };
export interface TypedStack extends Pick<StoredStack, "name" | "kind"> {
  readonly space: Typed<StoredStack["space"]>;
  readonly parts: readonly Typed<StoredStack["parts"][number]>[];
}

/** Invented: the housing of the pane crawler, as drawn before its cover was printed. */
export const CRAWLER_STACKS: readonly TypedStack[] = [
  {
    name: "Height under the cover",
    kind: "height",
    space: { name: "Cover, inside height", nominal: 0.032 },
    parts: [
      { name: "Motor", of: "motor.length" },
      { name: "Rotor", of: "rotor.height" },
      { name: "Air over the rotor", nominal: 0.001, basis: "free" },
    ],
  },
  {
    name: "Motor in its pocket",
    kind: "pocket",
    space: { name: "Motor pocket, bore", nominal: 0.0222 },
    parts: [{ name: "Motor", of: "motor.diameter", basis: "measured" }],
  },
  {
    name: "Tip clearance",
    kind: "tip",
    space: { name: "Casing, bore", nominal: 0.045 },
    parts: [
      { name: "Rotor", of: "rotor.diameter" },
      { name: "Room that the tips need, both sides", nominal: 0.0004, basis: "free" },
    ],
  },
  {
    name: "Room under the inlet",
    kind: "inlet",
    space: { name: "From the rotor's inlet to the pane", nominal: 0.007 },
    parts: [{ name: "Air under the inlet", of: "rotor.inletAir", basis: "free" }],
  },
  {
    name: "Skirt over the pane",
    kind: "gap",
    space: { name: "Wheel, radius", nominal: 0.017, basis: "measured" },
    parts: [
      { name: "Tyre, gives", nominal: 0.0004, tolerance: 0.0001, basis: "measured" },
      { name: "Axle over the lip's edge", nominal: 0.016, basis: "measured" },
    ],
  },
];
