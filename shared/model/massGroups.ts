/** What a vehicle's masses belong to, in the order in which they are shown. */
export const MASS_GROUPS = [
  "drive",
  "suction",
  "electronics",
  "structure",
  "cover",
  "paint and filler",
  "wiring",
  "pack",
] as const;

export type MassGroup = (typeof MASS_GROUPS)[number];
