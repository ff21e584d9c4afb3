import type { Build } from "../model/build.ts";
import type { StoredOf } from "../model/record.ts";
import type { BuildCalibration } from "./calibrated.ts";

/** The gap and what it rests on. */
export interface GapBasis {
  /** as the skirt says it was set, or measured with gauges; found by pull and leak tests; tried in the build */
  readonly basis: "set" | "measured" | "calibrated" | "what-if";
  /** stand-off without the surface's roughness [m] */
  readonly value: number;
  /** standard uncertainty [m]; null where none is stated */
  readonly uncertainty: number | null;
  /** what the skirt's record says; null where the book doesn't know the skirt [m] */
  readonly stated: { readonly basis: "set" | "measured"; readonly value: number } | null;
  /** the gap at which the vehicle stands as it was set: calibrated, else as stated; a what-if leaves it [m] */
  readonly standing: number;
  /** tests behind a calibrated gap */
  readonly testIds: readonly string[];
}

/**
 * The gap of a build: tried, else calibrated, else as the skirt says it.
 *
 * @param build - with its overrides and its stated uncertainties
 * @param skirt - its skirt; null where the book has none
 * @param calibration - of the skirt on the build's surface; null where no calibration is asked for or made
 * @returns value and uncertainty [m], and what they rest on
 *
 * Valid for the skirt and surface of the calibration. Source: docs/method/calibration.md, In the predictions
 */
export function gapBasis(
  build: Pick<Build, "overrides" | "uncertainty">,
  skirt: StoredOf<"skirts"> | null,
  calibration: BuildCalibration | null,
): GapBasis {
  // A record of before the field was known says nothing of it.
  const stated = skirt && { basis: skirt.data.gapBasis ?? "set", value: skirt.data.gap };
  const uncertainty = build.uncertainty["skirt.gap"] ?? skirt?.data.uncertainty.gap ?? null;
  const answer = calibration?.answer ?? null;
  const standing = answer ? answer.gap.mean : (stated?.value ?? 0);
  const whatIf = build.overrides.gap;
  const common = { stated, standing, testIds: [] };
  if (whatIf !== undefined) return { ...common, basis: "what-if", value: whatIf, uncertainty };
  if (!calibration || !answer)
    return { ...common, basis: stated?.basis ?? "set", value: standing, uncertainty };
  const { testIds: all, leaks, pullsTellGap } = calibration;
  const testIds = pullsTellGap ? all : [...new Set(leaks.map(({ testId }) => testId))];
  return { ...common, basis: "calibrated", value: standing, uncertainty: answer.gap.sd, testIds };
}
