import { requirePositive } from "../numeric/errors.ts";
import { formatPlain } from "../units/format.ts";
import { type Distribution, fitTrials, type PullFit, type PullTrial } from "./pullFit.ts";

export interface PullTrendTrial extends PullTrial {
  /** pull that the model gives at the charge, gap and supply of this trial [N] */
  readonly predicted: number;
}

export interface PullTrendFit {
  /** of measured over predicted pull; its numbers [-] stand where {@link PullFit} has [N] */
  readonly ratio: PullFit;
  /** pull at a predicted pull of `reference` [N] */
  readonly median: number;
  /** [N] */
  readonly reference: number;
}

/**
 * Pulls taken at different charge made comparable: the model's own pull is divided out of every bracket.
 *
 *     F = a·F_predicted, a normal or log-normal;  a ∈ [held/F_predicted, letGo/F_predicted]
 *
 * @param trials - held, letGo and predicted pull [N]
 * @param reference - predicted pull to restate the answer for [N]
 * @param distribution - of a, "lognormal" unless given
 * @returns a with its statistics [-], pull at the reference [N]
 * @throws {OutOfRangeError} on a prediction or reference that is not above 0; as {@link fitPull}
 * @throws {NotEnoughDataError} as {@link fitPull}
 *
 * Valid where the model's pull is wrong by one factor over the whole range. Source: docs/method/fits/pull.md
 */
export function fitPullTrend(
  trials: readonly PullTrendTrial[],
  reference: number,
  distribution: Distribution = "lognormal",
): PullTrendFit {
  requirePositive("reference", reference);
  const scaled = trials.map(({ held, letGo, predicted }, i) => {
    const by = requirePositive(`trials.${i}.predicted`, predicted);
    return { held: held / by, letGo: letGo === null ? null : letGo / by };
  });
  const ratio = fitTrials(
    { trials: scaled, distribution },
    (ratio, digits) => `${formatPlain(ratio, digits)} of the prediction`,
  );
  return { ratio, median: ratio.median * reference, reference };
}
