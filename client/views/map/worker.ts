import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import { type MapPart, mapPart } from "../../../shared/decide/map/solve.ts";
import { type Answer, asProblem } from "../../../shared/numeric/errors.ts";

/** A part of a map to be solved. */
export interface Task {
  /** of the map, so that the parts of an older one are told from it */
  readonly id: number;
  readonly question: MapQuestion;
  readonly range: readonly [from: number, to: number];
}

export interface Solved {
  readonly id: number;
  readonly answer: Answer<MapPart>;
}

/** Solves parts of maps away from the page's own thread. */
addEventListener("message", ({ data: { id, question, range } }: MessageEvent<Task>) =>
  postMessage({ id, answer: asProblem(() => mapPart(question, range)) } satisfies Solved),
);
