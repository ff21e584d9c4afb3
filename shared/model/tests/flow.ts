import type { z } from "zod";
import type { Plate } from "./common.ts";

interface FlowReadings {
  readonly flowFrom: "bleed-plate" | "known-flow";
  readonly plate?: Plate | string;
  readonly rows: readonly { readonly flow?: unknown; readonly open?: readonly number[] }[];
}

export type Say = (path: (string | number)[], message: string) => void;

function checkOpenHoles(
  plate: Plate | string,
  open: readonly number[] | undefined,
  row: number,
  say: Say,
): void {
  if (!open) say(["rows", row, "open"], "how many holes of each kind were open? For example [2, 0]");
  else if (typeof plate !== "string") checkCounts(plate, open, row, say);
}

/** No plate has more holes open than it has. */
export function checkCounts(plate: Plate, open: readonly number[], row: number, say: Say): void {
  const at = ["rows", row, "open"];
  if (open.length !== plate.holes.length)
    say(at, `give ${plate.holes.length} counts, one for each kind of hole`);
  for (const [k, hole] of plate.holes.entries()) {
    if (open[k] > hole.count) say([...at, k], `the plate has only ${hole.count} such holes`);
  }
}

/** Every row must carry what its way of knowing the flow needs, and no plate has more holes open than it has. */
export function checkFlowReadings(test: FlowReadings, context: z.RefinementCtx): void {
  const say: Say = (path, message) => context.addIssue({ code: "custom", path, message });
  const { plate } = test;
  if (test.flowFrom === "bleed-plate" && plate === undefined) {
    say(["plate"], "the bleed plate's holes are needed: diameter, thickness and count");
  }
  for (const [i, row] of test.rows.entries()) {
    if (test.flowFrom === "bleed-plate") {
      if (plate !== undefined) checkOpenHoles(plate, row.open, i, say);
    } else if (row.flow === undefined) {
      say(["rows", i, "flow"], 'a known flow is needed in each row, for example "4.2 L/s"');
    }
  }
}
