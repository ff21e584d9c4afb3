import { type Signal, signal } from "@preact/signals";
import { NO_POINTS, type Points, type PointsRequest, pointsOf } from "./points.ts";

/** A file with so many lines is read in one go; a longer one bit by bit, so that the screen answers meanwhile. */
const IN_ONE_GO = 20_000;
/** So long the screen may wait for the next bit [ms]. */
const BIT = 12;

/** The lines of a file as they are read, and how far. */
export interface Scan {
  readonly points: Signal<Points>;
  /** 0 to 1 while lines are being read; null while none are */
  readonly part: Signal<number | null>;
  /** reads anew; what was under way is given up. Null: nothing can be read yet */
  readonly start: (request: PointsRequest | null) => void;
}

/** @returns a reader of lines that has read none yet */
export function createScan(): Scan {
  const points = signal<Points>(NO_POINTS);
  const part = signal<number | null>(null);
  let underWay: Generator<number, Points> | null = null;
  const goOn = (reading: Generator<number, Points>, until: number) => {
    if (reading !== underWay) return;
    do {
      const step = reading.next();
      if (step.done) {
        points.value = step.value;
        part.value = null;
        underWay = null;
        return;
      }
      part.value = step.value;
    } while (performance.now() < until);
    setTimeout(() => goOn(reading, performance.now() + BIT));
  };
  const start = (request: PointsRequest | null) => {
    underWay = request && pointsOf(request);
    if (!underWay || !request) {
      points.value = NO_POINTS;
      part.value = null;
      return;
    }
    const isShort = request.table.lines.length <= IN_ONE_GO;
    goOn(underWay, isShort ? Number.POSITIVE_INFINITY : performance.now() + BIT);
  };
  return { points, part, start };
}
