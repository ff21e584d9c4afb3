import type { Book } from "../../../../shared/book/resolve.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { Stored } from "../../../../shared/model/record.ts";
import { headroomOf, tightestFirst } from "../headroom.ts";

/** What a build weighed and might weigh at one time, by the parts and tests of today. */
export interface Moment {
  readonly revision: number;
  /** ISO 8601 */
  readonly at: string;
  /** [kg] */
  readonly mass: number;
  /** at the wanted margin on the tightest attitude [kg]; null: not known, or any */
  readonly atTarget: number | null;
  /** at a margin of 1 there [kg] */
  readonly atOne: number | null;
  /** least margin, parked and driving [-]; null: not known, or no suction needed */
  readonly margin: number | null;
  readonly attitude: string | null;
}

/** Revisions looked at: the newest, where there are more. */
const MOST = 60;

/** What a build of before these were kept lacks: revisions stay as they were written. */
const LATER: Pick<Build, "ledger" | "stacks" | "places" | "exchanges" | "gear"> = {
  ledger: [],
  stacks: [],
  places: {},
  exchanges: { motors: [], rotors: [], packs: [], skirts: [] },
  gear: null,
};

function momentOf(book: Book, { revision, updatedAt, data }: Stored<Build>): Moment {
  const headroom = headroomOf(book, { ...LATER, ...data });
  const [tightest] = tightestFirst(headroom);
  return {
    revision,
    at: updatedAt,
    mass: headroom.mass,
    atTarget: tightest?.atTarget ?? null,
    atOne: tightest?.atOne ?? null,
    margin: headroom.outcome.prediction?.worst.driving.margin ?? null,
    attitude: tightest?.name ?? null,
  };
}

/** @returns a build's mass and limits at each of its revisions, the oldest first */
export function courseOf(book: Book, revisions: readonly Stored<Build>[]): Moment[] {
  return revisions.slice(-MOST).map((each) => momentOf(book, each));
}
