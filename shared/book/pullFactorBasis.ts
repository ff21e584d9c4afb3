import type { FactorBelief } from "../fit/calibration.ts";
import type { BuildCalibration } from "./calibrated.ts";

/** κ before any pull: 1, ±10 % as a log-normal standard uncertainty [-]. Common practice, no source: docs/method/calibration.md, Pull factor. */
export const ANY_FACTOR: FactorBelief = { median: 1, sd: 0.1 };

/** What a skirt pulls over what the model says, and what that rests on. */
export interface PullFactorBasis {
  /** pulls with the skirt on the surface; assumed without any */
  readonly basis: "calibrated" | "assumed";
  /** κ, the median that goes with the gap in use [-] */
  readonly value: number;
  /** standard uncertainty of κ, whatever the gap [-] */
  readonly uncertainty: number;
  /** tests behind it */
  readonly testIds: readonly string[];
}

/**
 * The pull factor of a build.
 *
 *     by pulls of its skirt on its surface, else 1 ± 0.10
 *
 * @param calibration - of the skirt on the build's surface; null where none is asked for or made
 * @returns κ and its standard uncertainty [-], and what they rest on
 *
 * Valid for the skirt and surface of the calibration. Source: docs/method/calibration.md, Pull factor
 */
export function pullFactorBasis(calibration: BuildCalibration | null): PullFactorBasis {
  const factor = calibration?.answer?.pullFactor;
  if (!calibration || !factor)
    return { basis: "assumed", value: ANY_FACTOR.median, uncertainty: ANY_FACTOR.sd, testIds: [] };
  const testIds = [...new Set(calibration.pulls.map(({ testId }) => testId))];
  return { basis: "calibrated", value: factor.given, uncertainty: factor.sd, testIds };
}
