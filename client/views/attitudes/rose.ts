import { type Resolved, solvable } from "../../../shared/book/resolve.ts";
import { type PredictInput, predict } from "../../../shared/physics/predict.ts";
import { type AnyPredictInput, isPropeller } from "../../../shared/physics/predictAny.ts";
import type { Outcome } from "../../state/outcome.ts";
import { SAME_ANGLE } from "../../ui/verdictWords.ts";
import { type Sector, sectorsOf } from "./sectors.ts";
import { type Stand, type State, standAt } from "./stand.ts";

/** Pull made with a gap wider and narrower by its standard uncertainty, and by nothing else. */
export interface Spread {
  /** [N] */
  readonly less: number;
  readonly more: number;
  /** of the gap [m] */
  readonly doubt: number;
}

/** An attitude with a name, drawn as a spoke and told in the table. */
export interface NamedStand {
  readonly key: string;
  readonly title: string;
  readonly kind: "standard" | "own" | "worst";
  readonly stand: Stand;
}

export interface Rose {
  readonly outcome: Outcome;
  readonly input: AnyPredictInput;
  /** pull made [N] */
  readonly made: number;
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

function pullAt(input: PredictInput, gap: number): number {
  return Math.max(0, predict({ ...input, skirt: { ...input.skirt, gap: Math.max(0, gap) } }).suction);
}

/** None where no uncertainty is stated or a measured leak stands in the gap's place. */
function spreadOf(input: AnyPredictInput, resolved: Resolved): Spread | null {
  if (isPropeller(input)) return null;
  const doubt = resolved.gap.uncertainty;
  if (doubt === null || doubt === 0 || resolved.leak) return null;
  const ends = [pullAt(input, input.skirt.gap - doubt), pullAt(input, input.skirt.gap + doubt)];
  return { less: Math.min(...ends), more: Math.max(...ends), doubt };
}

function rimOf(made: number, spread: Spread | null, stands: readonly Stand[]): number {
  const needs = stands.map((stand) => stand.driving.pull).filter(Number.isFinite);
  const need = Math.max(...needs, 0);
  const most = made > 0 ? Math.min(need, MOST_HEADROOM * made) : need;
  return Math.max(made, spread?.more ?? 0, most) * RIM || 1;
}

function namedStands(rose: Pick<Rose, "outcome" | "worst">, at: (angle: number) => Stand): NamedStand[] {
  const { worst, outcome } = rose;
  const standard = (title: string, angle: number): NamedStand => ({
    key: `standard ${angle}`,
    title,
    kind: "standard",
    stand: at(angle),
  });
  const own = outcome.build.attitudes.map(
    ({ name, angle }, i): NamedStand => ({ key: `own ${i}`, title: name, kind: "own", stand: at(angle) }),
  );
  const apart = Math.abs(worst.parked.angle - worst.driving.angle) >= SAME_ANGLE;
  const first = { key: "worst", title: apart ? "Worst parked" : "Worst", kind: "worst" } as const;
  return [
    standard("Floor", 0),
    standard("Wall", CEILING / 2),
    standard("Ceiling", CEILING),
    ...own,
    { ...first, stand: worst.parked },
    ...(apart
      ? [{ key: "worst driving", title: "Worst driving", kind: "worst", stand: worst.driving } as const]
      : []),
  ];
}

/**
 * Everything that Attitudes draws and tells of one build.
 *
 * @param outcome - the solved build
 * @returns null where the build has no numbers
 */
export function roseOf(outcome: Outcome): Rose | null {
  const { resolved, prediction } = outcome;
  const input = resolved && solvable(resolved);
  if (!input || !prediction) return null;
  const made = Math.max(0, prediction.suction);
  const at = (angle: number) => standAt(input.vehicle, made, angle);
  const stands = Array.from({ length: CEILING + 1 }, (_, angle) => at(angle));
  const spread = spreadOf(input, resolved);
  const worst = { parked: at(prediction.worst.parked.angle), driving: at(prediction.worst.driving.angle) };
  return {
    outcome,
    input,
    made,
    spread,
    stands,
    sectors: { parked: sectorsOf(stands, "parked", at), driving: sectorsOf(stands, "driving", at) },
    worst,
    named: namedStands({ outcome, worst }, at),
    rim: rimOf(made, spread, stands),
  };
}
