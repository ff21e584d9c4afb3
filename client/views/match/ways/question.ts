import { type Book, solvable } from "../../../../shared/book/resolve.ts";
import { testedSizes } from "../../../../shared/book/rotorBasis.ts";
import type { Wanted } from "../../../../shared/decide/wanted.ts";
import type { Asked } from "../../../../shared/decide/ways/ways.ts";
import type { TestedAt } from "../../../../shared/physics/point/sizeLaw.ts";
import type { AnyPredictInput } from "../../../../shared/physics/predictAny.ts";
import type { CellInput } from "../../../../shared/physics/rundown.ts";
import type { Outcome } from "../../../state/outcome.ts";

/** What is asked of the other thread, all of it plain data. */
export interface Question {
  readonly build: AnyPredictInput;
  readonly cell: CellInput | null;
  /** where the rotor's curve was tested, for its size correction at other diameters */
  readonly sizes: readonly TestedAt[];
  /** of the motor [K]; null: not stated */
  readonly windingLimit: number | null;
  readonly asked: Asked;
}

/** @returns the question that a build and a wanted attitude make; null where the build has no numbers yet */
export function questionOf(book: Book, { build, resolved }: Outcome, wanted: Wanted): Question | null {
  const input = resolved && solvable(resolved);
  if (!input) return null;
  return {
    build: input,
    cell: resolved.pack?.cell ?? null,
    sizes: resolved.rotor ? testedSizes(resolved.rotor) : [],
    windingLimit: book.motors.find(({ id }) => id === build.motor)?.data.windingLimit ?? null,
    asked: { ...wanted, targetMargin: build.targetMargin },
  };
}
