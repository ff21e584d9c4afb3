import { z } from "zod";
import { formatShort } from "../units/format.ts";
import { BUILD, MOST_CYCLE_PARTS } from "./limits.ts";
import { nonNegative, positive, within } from "./scalar.ts";

/** Shares are typed with a few digits: a third three times over is 0.999. */
const SHARE_SLACK = 1e-3;

/** One part of a drive cycle: on which attitude, for what share of the time, with what drive current. */
export const cycleSegment = z
  .strictObject({
    angle: within("degrees, 0 floor to 180 ceiling", BUILD.cycle.angle),
    share: positive("fraction of the time", BUILD.cycle.share),
    driveCurrent: nonNegative(
      "A, of the drive motors out of the pack, beside the other loads",
      BUILD.cycle.driveCurrent,
    ).default(0),
    moving: z.boolean().default(true).describe("false: parked there, its drive draws nothing"),
  })
  .refine((segment) => segment.moving || segment.driveCurrent === 0, {
    message: "a parked vehicle's drive draws nothing: give 0, or say that it moves",
    path: ["driveCurrent"],
  });

/** A drive cycle that comes again and again; its shares are the whole of the time. */
export const driveCycle = z
  .array(cycleSegment)
  .min(1)
  .max(MOST_CYCLE_PARTS)
  .superRefine((segments, context) => {
    const sum = segments.reduce((total, { share }) => total + share, 0);
    if (segments.length === 0 || Math.abs(sum - 1) <= SHARE_SLACK) return;
    const message = `the shares add up to ${formatShort(sum, 4)}; they must add up to 1, for example ${formatShort(0.6, 1)} and ${formatShort(0.4, 1)}`;
    context.addIssue({ code: "custom", message });
  })
  .describe("share of the time and drive current by attitude");
