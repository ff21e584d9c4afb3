/** A reading of one cell at its state of charge. */
export interface CellReading {
  /** z [-] */
  readonly charge: number;
  /** [V] */
  readonly voltage: number;
  /** drawn from the cell [A] */
  readonly current: number;
}

/** How a reading lies off the straight line between two others, over √(1 + s² + (1 − s)²) so that all scatter alike. */
export interface Step {
  /** z of the reading [-] */
  readonly charge: number;
  /** [V] */
  readonly voltage: number;
  /** [A] */
  readonly current: number;
  /** indices among all readings: the one before, the reading, the one after */
  readonly at: readonly [number, number, number];
  readonly weights: readonly [number, number, number];
}

/** A discharge, by falling charge, and where its readings begin among those of all. */
interface Ordered {
  readonly readings: readonly CellReading[];
  readonly first: number;
}

/** Step of current, as a share of the largest current, below which a reading tells nothing of R. Judgement. */
const LEAST_STEP = 0.05;

/** Charge between two readings of one discharge, beyond which the line between them says nothing of another [-]. Judgement. */
const MOST_SPAN = 0.1;

function stepBetween(before: CellReading, middle: CellReading, after: CellReading, at: Step["at"]): Step {
  const span = after.charge - before.charge;
  const share = span === 0 ? 1 / 2 : (middle.charge - before.charge) / span;
  const scale = 1 / Math.sqrt(1 + share ** 2 + (1 - share) ** 2);
  const off = (pick: (reading: CellReading) => number) =>
    scale * (pick(middle) - (1 - share) * pick(before) - share * pick(after));
  return {
    charge: middle.charge,
    voltage: off((reading) => reading.voltage),
    current: off((reading) => reading.current),
    at,
    weights: [-scale * (1 - share), scale, -scale * share],
  };
}

/** Each reading against its own neighbours. */
function withinRun({ readings, first }: Ordered): Step[] {
  return readings
    .slice(1, -1)
    .map((middle, i) =>
      stepBetween(readings[i], middle, readings[i + 2], [first + i, first + i + 1, first + i + 2]),
    );
}

/** Each reading of one run against the two of another between which its charge lies. */
function across(one: Ordered, other: Ordered): Step[] {
  const steps: Step[] = [];
  let next = 1;
  one.readings.forEach((middle, i) => {
    while (next < other.readings.length && other.readings[next].charge > middle.charge) next += 1;
    const [before, after] = [other.readings[next - 1], other.readings[next]];
    if (!after || before.charge < middle.charge || before.charge - after.charge > MOST_SPAN) return;
    const at = [other.first + next - 1, one.first + i, other.first + next] as const;
    steps.push(stepBetween(before, middle, after, at));
  });
  return steps;
}

function orderedRuns(runs: readonly (readonly CellReading[])[]): Ordered[] {
  let first = 0;
  return runs.map((readings) => {
    const ordered = { readings: [...readings].sort((a, b) => b.charge - a.charge), first };
    first += readings.length;
    return ordered;
  });
}

function telling(steps: readonly Step[], runs: readonly Ordered[]): Step[] {
  const most = runs
    .flatMap(({ readings }) => readings)
    .reduce((largest, { current }) => Math.max(largest, current), 0);
  return steps.filter(({ current }) => Math.abs(current) > LEAST_STEP * most);
}

/** @returns steps of current within each discharge, those that tell of R */
export function stepsWithin(runs: readonly (readonly CellReading[])[]): Step[] {
  const ordered = orderedRuns(runs);
  return telling(ordered.flatMap(withinRun), ordered);
}

/** @returns steps of current from one discharge to another at the same charge, those that tell of R */
export function stepsAcross(runs: readonly (readonly CellReading[])[]): Step[] {
  const ordered = orderedRuns(runs);
  const steps = ordered.flatMap((one) =>
    ordered.flatMap((other) => (other === one ? [] : across(one, other))),
  );
  return telling(steps, ordered);
}
