import type { Spread } from "../../../../shared/decide/uncertainty.ts";
import type { Grade } from "../../../ui/verdictWords.ts";

/** The bar ends at this margin; more looks the same [-]. */
const MOST = 3;
/** Its own units: a hundred to the whole. */
const WIDTH = 100;

const at = (margin: number) => (Math.min(MOST, Math.max(0, margin)) / MOST) * WIDTH;

export interface MarginBarProps {
  /** null where no pull is needed: an empty bar [-] */
  readonly margin: number | null;
  readonly target: number;
  readonly spread: Pick<Spread, "p5" | "p95"> | null;
  readonly grade: Grade;
}

/** A margin as a bar: a tick at 1, a dashed one at what is wanted, a whisker over 90 % of the samples. */
export function MarginBar({ margin, target, spread, grade }: MarginBarProps) {
  const { p5, p95 } = spread ?? { p5: null, p95: null };
  return (
    <svg class={`margin-bar ${grade}`} viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
      <line class="margin-ground" x2={WIDTH} y1="6" y2="6" />
      {margin !== null && <line class="margin-made" x2={at(margin)} y1="6" y2="6" />}
      {p5 !== null && p95 !== null && <line class="margin-range" x1={at(p5)} x2={at(p95)} y1="6" y2="6" />}
      <line class="margin-one" x1={at(1)} x2={at(1)} y1="0" y2="12" />
      <line class="margin-target" x1={at(target)} x2={at(target)} y1="1" y2="11" />
    </svg>
  );
}
