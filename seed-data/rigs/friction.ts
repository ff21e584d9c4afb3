import { type SKIRTS, SURFACES } from "../truth.ts";
import type { Id, Rig } from "./rig.ts";

/** @returns a tilt test of wheels or skirt on a surface, six slides to the degree */
export function friction(
  { normal, head }: Rig,
  surface: Id<typeof SURFACES>,
  contact: "wheels" | "skirt",
  date: string,
  skirt: Id<typeof SKIRTS> | null = null,
) {
  const mu = contact === "wheels" ? SURFACES[surface].wheelFriction : SURFACES[surface].skirtFriction;
  const rows = Array.from({ length: 6 }, () => {
    const slips = (Math.atan(mu * (1 + 0.04 * normal())) * 180) / Math.PI;
    const held = Math.floor(slips);
    return { held: { value: held, unit: "°" }, slid: { value: held + 1, unit: "°" } };
  });
  return {
    ...head(
      "friction",
      `${contact === "wheels" ? "Wheels" : "Skirt"} on ${SURFACES[surface].name.toLowerCase()}`,
      date,
    ),
    surface,
    contact,
    skirt,
    instruments: { angle: "tilt-board" },
    rows,
  };
}
