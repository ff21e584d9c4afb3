import { findRoot } from "../../shared/numeric/root.ts";
import { EDGE_LOSS, gapFlow } from "../../shared/physics/restriction/lipGap.ts";
import { SKIRTS, SURFACES } from "../truth.ts";
import { type Id, PLATE_AS_READ, plateFlow, type Rig } from "./rig.ts";

/** @returns a leak test of a skirt on a surface, on a shim [m] or as it stands */
export function leak(
  { air, pascals, head }: Rig,
  skirt: Id<typeof SKIRTS>,
  surface: Id<typeof SURFACES>,
  shim: number | null,
  date: string,
) {
  const { perimeter, land, edge, gap, name } = SKIRTS[skirt];
  const lip = {
    perimeter,
    land,
    lossSum: EDGE_LOSS[edge],
    height: (shim ?? gap) + SURFACES[surface].roughness,
  };
  const rows = [80, 150, 260, 420, 650, 900, 1250].map((pressure) => {
    const flow = gapFlow(lip, air, pressure);
    const open = [12, Math.min(36, Math.max(1, Math.round(flow / 0.0009)))];
    const drop = findRoot((p) => plateFlow(open, air, p) - flow, 1e-3, 2e4).root;
    return { pressure: pascals(pressure), platePressure: pascals(drop), open };
  });
  return {
    ...head("leak", `${name} on ${SURFACES[surface].name.toLowerCase()}, openings taped`, date),
    skirt,
    surface,
    ...(shim === null ? {} : { gap: { value: shim * 1000, unit: "mm" } }),
    flowFrom: "bleed-plate",
    plate: PLATE_AS_READ,
    instruments: { pressure: { percent: 0.7, absolute: { value: 1.5, unit: "Pa" } } },
    rows,
  };
}
