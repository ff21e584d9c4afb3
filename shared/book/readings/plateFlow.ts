import { bleedFlow } from "../../fit/bleed.ts";
import type { Plate } from "../../model/tests/common.ts";
import type { Air } from "../../physics/air.ts";
import { toSI } from "../../units/quantity.ts";

export interface MeteredFlow {
  /** [m³/s] */
  readonly flow: number;
  /** standard, relative, of the plate's law [-] */
  readonly uncertainty: number;
}

const NO_FLOW: MeteredFlow = { flow: 0, uncertainty: 0 };

/** @returns flow through a bleed plate with these holes open [m³/s], and how unsure its law is [-]; none without a plate, an open hole or a pressure @throws {OutOfRangeError} on a pressure beyond the ambient's */
export function plateFlow(
  plate: Plate | undefined,
  open: readonly number[] | undefined,
  air: Air,
  pressure: number,
): MeteredFlow {
  if (!plate || !open) return NO_FLOW;
  const holes = plate.holes.map((hole, k) => ({
    diameter: toSI(hole.diameter, "length"),
    thickness: toSI(hole.thickness, "length"),
    count: open[k] ?? 0,
    edge: hole.edge,
    dischargeCoefficient: hole.dischargeCoefficient,
  }));
  const openNow = holes.filter((kind) => kind.count > 0);
  if (openNow.length === 0 || !(pressure > 0)) return NO_FLOW;
  return bleedFlow({ holes: openNow, air, pressure });
}
