import { namedAttitudes } from "../../../shared/book/attitudes.ts";
import { type Ledger, ledgerOf } from "../../../shared/book/mass/ledger.ts";
import { allowedWorkings, massBoard } from "../../../shared/book/mass/workings.ts";
import { type Book, solvable } from "../../../shared/book/resolve.ts";
import { allowedMasses } from "../../../shared/decide/allowedMass.ts";
import { worstName } from "../../../shared/decide/verdict/attitudeWords.ts";
import type { Wanted } from "../../../shared/decide/wanted.ts";
import type { Build } from "../../../shared/model/build.ts";
import { answerOrNull } from "../../../shared/numeric/errors.ts";
import type { Board } from "../../../shared/physics/working.ts";
import { type Outcome, solve } from "../../state/outcome.ts";
import { boardOf } from "../../ui/working/board.ts";

/** How much a build may weigh on one attitude; null: any mass holds there [kg]. */
export interface Allowed {
  /** as a sentence says it: "the wall", "the overhang at 128°" */
  readonly name: string;
  readonly title: string;
  readonly angle: number;
  readonly atTarget: number | null;
  readonly atOne: number | null;
}

/** What a build weighs against what it may weigh. */
export interface Headroom {
  readonly outcome: Outcome;
  readonly ledger: Ledger;
  /** [kg] */
  readonly mass: number;
  readonly target: number;
  /** by attitude; empty where the build has no numbers yet */
  readonly allowed: readonly Allowed[];
}

/** Nearer than this, the worst angle is the named attitude [°]. */
const SAME_ANGLE = 0.5;

/** The attitudes that the build must hold, and the worst of all where it has no name yet. */
function attitudesOf({ build, prediction }: Outcome) {
  const named = namedAttitudes(build).map((each) => ({
    ...each,
    attitude: each.angle as Wanted["attitude"],
  }));
  const angle = prediction?.worst.driving.angle ?? null;
  if (angle === null || named.some((each) => Math.abs(each.angle - angle) < SAME_ANGLE)) return named;
  const degrees = Math.round(angle);
  const name = `${worstName(angle)} at ${degrees}°`;
  return [...named, { name, title: `Worst, ${degrees}°`, angle, attitude: "worst" as const }];
}

function allowedOf(outcome: Outcome): Allowed[] {
  const input = outcome.resolved && solvable(outcome.resolved);
  if (!input || !outcome.prediction) return [];
  const attitudes = attitudesOf(outcome);
  const wanted = attitudes.map(({ attitude }): Wanted => ({ attitude, mode: "driving" }));
  const masses = answerOrNull(() => allowedMasses(input, wanted, [outcome.build.targetMargin, 1]));
  if (!masses) return [];
  return attitudes.map(({ name, title, angle }, i) => {
    const [atTarget, atOne] = masses[i];
    return { name, title, angle, atTarget, atOne };
  });
}

/** @returns a build's ledger, and how much more it may weigh, by the same model as Match */
export function headroomOf(book: Book, build: Build): Headroom {
  const outcome = solve(book, build);
  const ledger = ledgerOf(book, build);
  return {
    outcome,
    ledger,
    mass: ledger.mass.value,
    target: build.targetMargin,
    allowed: allowedOf(outcome),
  };
}

/** @returns how the masses that are allowed came about, and what is left of each, down to the margins and the ledger */
export function headroomBoard(book: Book, build: Build, { outcome, allowed, mass, target }: Headroom): Board {
  const margins = boardOf(book, outcome);
  const ledger = massBoard(book, build);
  const { prediction } = outcome;
  const marginAt = (angle: number) =>
    prediction?.attitudes.find((each) => each.angle === angle)?.driving.margin ??
    (prediction?.worst.driving.angle === angle ? prediction.worst.driving.margin : null);
  const workings = allowed.flatMap(({ name, angle, atTarget, atOne }) => {
    const of = (limit: number | null, wanted: number) =>
      limit === null
        ? []
        : allowedWorkings({ name, angle, target: wanted, allowed: limit, mass, margin: marginAt(angle) });
    return [...of(atTarget, target), ...(target === 1 ? [] : of(atOne, 1))];
  });
  return {
    workings: [...workings, ...ledger.workings, ...margins.workings],
    origins: [...ledger.origins, ...margins.origins],
  };
}

/** @returns the attitudes whose limit can be met or missed, the tightest first */
export function tightestFirst({
  allowed,
}: Pick<Headroom, "allowed">): (Allowed & { readonly atTarget: number })[] {
  return allowed
    .flatMap((each) => (each.atTarget === null ? [] : [{ ...each, atTarget: each.atTarget }]))
    .sort((a, b) => a.atTarget - b.atTarget);
}
