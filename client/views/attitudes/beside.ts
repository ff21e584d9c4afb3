import { namedAttitudes } from "../../../shared/book/attitudes.ts";
import { type Book, solvable } from "../../../shared/book/resolve.ts";
import type { Verdict } from "../../../shared/decide/verdict/verdict.ts";
import type { Build } from "../../../shared/model/build.ts";
import { predictAny } from "../../../shared/physics/predictAny.ts";
import { type Outcome, solve } from "../../state/outcome.ts";
import { verdictBeside } from "../../state/verdict/found.ts";

/** Margins of one build at one attitude; null where no pull is needed. */
export interface Margins {
  /** worst attitude's own angle [°] */
  readonly angle: number;
  readonly parked: number | null;
  readonly driving: number | null;
}

/** One build beside the others. */
export interface Column {
  readonly id: string;
  readonly name: string;
  /** null where it has none */
  readonly verdict: Verdict | null;
  /** by row; null where the build can't be answered for */
  readonly margins: readonly (Margins | null)[];
}

export interface Beside {
  /** the shown build's attitudes, then the worst */
  readonly rows: readonly string[];
  readonly columns: readonly Column[];
}

/** Margins at the angles asked for, whatever attitudes the build itself names. */
function marginsOf({ resolved, prediction }: Outcome, angles: readonly number[]): (Margins | null)[] {
  const input = resolved && solvable(resolved);
  if (!input || !prediction) return [...angles, null].map(() => null);
  const at = predictAny(input, [...angles]).attitudes.map(({ angle, parked, driving }) => ({
    angle,
    parked: parked.margin,
    driving: driving.margin,
  }));
  const { parked, driving } = prediction.worst;
  return [...at, { angle: parked.angle, parked: parked.margin, driving: driving.margin }];
}

/** @returns the shown build and those laid beside it, attitude by attitude */
export function besideOf(
  book: Book,
  shown: { readonly id: string; readonly data: Build },
  others: readonly string[],
): Beside {
  const named = namedAttitudes(shown.data);
  const angles = named.map(({ angle }) => angle);
  const builds = [shown, ...others.flatMap((id) => book.builds.find((build) => build.id === id) ?? [])];
  return {
    rows: [...named.map(({ title, angle }) => `${title} ${angle.toFixed(0)}°`), "Worst"],
    columns: builds.map(({ id, data }) => {
      const outcome = solve(book, data);
      const verdict = verdictBeside(book, outcome);
      return { id, name: data.name, verdict, margins: marginsOf(outcome, angles) };
    }),
  };
}
