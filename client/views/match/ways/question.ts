import { jointsUnder, lipSpan } from "../../../../shared/book/jointsUnder.ts";
import { type Book, solvable } from "../../../../shared/book/resolve.ts";
import type { Wanted } from "../../../../shared/decide/wanted.ts";
import type { Asked } from "../../../../shared/decide/ways/ways.ts";
import type { TestedAt } from "../../../../shared/physics/point/sizeLaw.ts";
import type { AnyPredictInput } from "../../../../shared/physics/predictAny.ts";
import type { CellInput } from "../../../../shared/physics/rundown.ts";
import type { Outcome } from "../../../state/outcome.ts";
import type { JointQuestion } from "./joints.ts";

/** What is asked of the other thread, all of it plain data. */
export interface Question {
  readonly build: AnyPredictInput;
  readonly cell: CellInput | null;
  /** where the rotor's curve was tested, for its size correction at other diameters */
  readonly sizes: readonly TestedAt[];
  /** of the motor [K]; null: not stated */
  readonly windingLimit: number | null;
  readonly asked: Asked;
  /** null: no skirt */
  readonly crossing: JointQuestion | null;
}

/** Joints are asked for as wide as the widest of the surface. */
function crossingOf(book: Book, { build, resolved }: Outcome): JointQuestion | null {
  const span = resolved?.input ? lipSpan(book, build) : null;
  if (span === null) return null;
  const widths = jointsUnder(book, build)?.joints.map(({ width }) => width) ?? [];
  return { span, width: widths.length > 0 ? Math.max(...widths) : null };
}

/** @returns the question that a build and a wanted attitude make; null where the build has no numbers yet */
export function questionOf(book: Book, outcome: Outcome, wanted: Wanted): Question | null {
  const { build, resolved } = outcome;
  const input = resolved && solvable(resolved);
  if (!input) return null;
  return {
    build: input,
    cell: resolved.pack?.cell ?? null,
    sizes: resolved.rotor?.sizes ?? [],
    windingLimit: book.motors.find(({ id }) => id === build.motor)?.data.windingLimit ?? null,
    crossing: crossingOf(book, outcome),
    asked: { ...wanted, targetMargin: build.targetMargin },
  };
}
