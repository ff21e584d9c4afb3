import type { StoredOf } from "../model/record.ts";
import { EDGE_LOSS } from "../physics/restriction/lipGap.ts";
import type { MeasuredLeak } from "../physics/restriction/measuredLeak.ts";
import type { SkirtInput } from "../physics/skirt.ts";

/** @returns a skirt at one gap on a surface of some roughness [m], a measured leak in the gap's place where there is one, SI */
export function skirtInput(
  skirt: StoredOf<"skirts">,
  roughness: number,
  gap: number,
  measuredLeak: MeasuredLeak | null,
): SkirtInput {
  const { perimeter, area, land, edge, lossSum, openings, holes, honeycombs } = skirt.data;
  return {
    perimeter,
    area,
    land,
    lossSum: lossSum ?? EDGE_LOSS[edge],
    landFriction: 1,
    openings,
    holes,
    honeycombs,
    gap,
    roughness,
    measuredLeak,
  };
}
