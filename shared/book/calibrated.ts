import type { Belief, Calibration, CalibrationRequest, FactorBelief } from "../fit/calibration.ts";
import type { Build } from "../model/build.ts";

/** Where a row of a test stands in the book. */
export interface RowOfTest {
  readonly testId: string;
  readonly row: number;
}

/** What a calibration asks of a build. */
export type CalibratedBuild = Pick<Build, "skirt" | "surface" | "uncertainty">;

/** Gap, friction and pull factor from all pull and leak tests of a build's skirt on its surface. */
export interface BuildCalibration {
  /** null where the tests can't be brought together; `why` then says it */
  readonly answer: Calibration | null;
  readonly why: string | null;
  readonly prior: {
    readonly gap: Belief;
    readonly friction: Belief;
    readonly pullFactor: FactorBelief;
  };
  /** rows behind the residuals: the residual of place `pull` belongs to `pulls[pull]` */
  readonly pulls: readonly RowOfTest[];
  /** in the order of the leak residuals */
  readonly leaks: readonly RowOfTest[];
  /** pulls whose rig the book doesn't know well enough */
  readonly leftOut: readonly RowOfTest[];
  /** false: a leak test stands in the gap's place, and the pulls tell the pull factor alone */
  readonly pullsTellGap: boolean;
  /** every test that takes part */
  readonly testIds: readonly string[];
  /** what was handed to {@link calibrate} */
  readonly request: CalibrationRequest;
}
