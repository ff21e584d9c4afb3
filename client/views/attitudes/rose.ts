import { solvable } from "../../../shared/book/resolve.ts";
import type { AttitudeUncertainty, Uncertainty } from "../../../shared/decide/uncertainty.ts";
import { SAME_ANGLE } from "../../../shared/decide/verdict/attitudeWords.ts";
import type { Pull } from "../../../shared/physics/hold/pull.ts";
import { type AnyPredictInput, pullOfAny } from "../../../shared/physics/predictAny.ts";
import type { Outcome } from "../../state/outcome.ts";
import { type Sector, sectorsOf } from "./sectors.ts";
import { type Stand, type State, standAt } from "./stand.ts";

/** Pull made, from that which 5 % of the samples stay under to that which 95 % do [N]. */
export interface Spread {
  readonly less: number;
  readonly more: number;
}

/** An attitude with a name, drawn as a spoke and told in the table. */
export interface NamedStand {
  readonly key: string;
  readonly title: string;
  readonly kind: "standard" | "own" | "worst";
  readonly stand: Stand;
  /** of the samples there; null where not worked out */
  readonly sure: AttitudeUncertainty | null;
}

export interface Rose {
  readonly outcome: Outcome;
  readonly input: AnyPredictInput;
  /** pull made with the gap as set [N] */
  readonly made: number;
  /** the same, giving where the running gear gives */
  readonly pull: Pull;
  readonly spread: Spread | null;
  /** a stand a degree, floor to ceiling */
  readonly stands: readonly Stand[];
  readonly sectors: Readonly<Record<State, readonly Sector[]>>;
  readonly worst: Readonly<Record<State, Stand>>;
  readonly named: readonly NamedStand[];
  /** pull at the drawing's rim [N] */
  readonly rim: number;
}

const CEILING = 180;
/** A need far above the pull made runs over the rim instead of flattening the rest. */
const MOST_HEADROOM = 2.2;
const RIM = 1.06;

function spreadOf(doubt: Uncertainty | null): Spread | null {
  const { p5, p95 } = doubt?.suction ?? { p5: null, p95: null };
  return p5 === null || p95 === null ? null : { less: p5, more: p95 };
}

function rimOf(made: number, spread: Spread | null, stands: readonly Stand[]): number {
  const needs = stands.map((stand) => stand.driving.pull).filter(Number.isFinite);
  const need = Math.max(...needs, 0);
  const most = made > 0 ? Math.min(need, MOST_HEADROOM * made) : need;
  return Math.max(made, spread?.more ?? 0, most) * RIM || 1;
}

function namedStands(
  { worst, outcome }: Pick<Rose, "outcome" | "worst">,
  at: (angle: number) => Stand,
  doubt: Uncertainty | null,
): NamedStand[] {
  const sureAt = (angle: number) => doubt?.attitudes.find((each) => each.angle === angle) ?? null;
  const [parked = null, driving = null] = doubt?.attitudes.slice(-2) ?? [];
  const standard = (title: string, angle: number): NamedStand => ({
    key: `standard ${angle}`,
    title,
    kind: "standard",
    stand: at(angle),
    sure: sureAt(angle),
  });
  const own = outcome.build.attitudes.map(
    ({ name, angle }, i): NamedStand => ({
      key: `own ${i}`,
      title: name,
      kind: "own",
      stand: at(angle),
      sure: sureAt(angle),
    }),
  );
  const apart = Math.abs(worst.parked.angle - worst.driving.angle) >= SAME_ANGLE;
  const first = { key: "worst", title: apart ? "Worst parked" : "Worst", kind: "worst" } as const;
  return [
    standard("Floor", 0),
    standard("Wall", CEILING / 2),
    standard("Ceiling", CEILING),
    ...own,
    { ...first, stand: worst.parked, sure: parked },
    ...(apart
      ? [
          {
            key: "worst driving",
            title: "Worst driving",
            kind: "worst",
            stand: worst.driving,
            sure: driving,
          } as const,
        ]
      : []),
  ];
}

/**
 * Everything that Attitudes draws and tells of one build.
 *
 * @param outcome - the solved build
 * @param doubt - of its samples, the worst parked and the worst driving attitude last; null where not worked out
 * @returns null where the build has no numbers
 */
export function roseOf(outcome: Outcome, doubt: Uncertainty | null = null): Rose | null {
  const { resolved, prediction } = outcome;
  const input = resolved && solvable(resolved);
  if (!input || !prediction) return null;
  const made = Math.max(0, prediction.suction);
  const pull = pullOfAny(input, prediction);
  const at = (angle: number) => standAt(input.vehicle, pull, angle);
  const stands = Array.from({ length: CEILING + 1 }, (_, angle) => at(angle));
  const spread = spreadOf(doubt);
  const worst = { parked: at(prediction.worst.parked.angle), driving: at(prediction.worst.driving.angle) };
  return {
    outcome,
    input,
    made,
    pull,
    spread,
    stands,
    sectors: { parked: sectorsOf(stands, "parked", at), driving: sectorsOf(stands, "driving", at) },
    worst,
    named: namedStands({ outcome, worst }, at, doubt),
    rim: rimOf(made, spread, stands),
  };
}
