import { type BleedRequest, bleedFlow } from "../../fit/bleed.ts";
import type { Plate } from "../../model/tests/common.ts";
import type { InlinedTest } from "../../model/tests/index.ts";
import type { Air } from "../../physics/air.ts";
import { toSI } from "../../units/quantity.ts";
import { airOfDay, maybe } from "./reading.ts";

export interface MeteredFlow {
  /** [m³/s] */
  readonly flow: number;
  /** standard, relative, of the plate's law [-] */
  readonly uncertainty: number;
}

const NO_FLOW: MeteredFlow = { flow: 0, uncertainty: 0 };

/** @returns what a bleed plate is asked with these holes open; null without a plate, an open hole or a pressure */
export function bleedOf(
  plate: Plate | undefined,
  open: readonly number[] | undefined,
  air: Air,
  pressure: number,
): BleedRequest | null {
  if (!plate || !open || !(pressure > 0)) return null;
  const holes = plate.holes.map((hole, k) => ({
    diameter: toSI(hole.diameter, "length"),
    thickness: toSI(hole.thickness, "length"),
    count: open[k] ?? 0,
    edge: hole.edge,
    dischargeCoefficient: hole.dischargeCoefficient,
  }));
  const openNow = holes.filter((kind) => kind.count > 0);
  return openNow.length === 0 ? null : { holes: openNow, air, pressure };
}

/** @returns flow through a bleed plate with these holes open [m³/s], and how unsure its law is [-]; none without a plate, an open hole or a pressure @throws {OutOfRangeError} on a pressure beyond the ambient's */
export function plateFlow(...of: Parameters<typeof bleedOf>): MeteredFlow {
  const request = bleedOf(...of);
  return request ? bleedFlow(request) : NO_FLOW;
}

/** @returns what the plate is asked in a row of a curve test, or of a leak test with a plate in series; null where no plate meters it */
export function rowBleed(test: InlinedTest, row: number): BleedRequest | null {
  if ((test.kind !== "curve" && test.kind !== "leak") || test.flowFrom === "known-flow") return null;
  const air = airOfDay(test.air);
  const read = test.kind === "curve" ? test.rows[row]?.pressure : test.rows[row]?.platePressure;
  return bleedOf(test.plate, test.rows[row]?.open, air, maybe(read, "pressure") ?? 0);
}
