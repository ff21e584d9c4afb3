import type { FamilyReading } from "./family.ts";

export interface ReadingGroup {
  readonly key: string;
  readonly test: number;
  /** mean of the group */
  readonly rpm: number;
  /** slowest and fastest of it */
  readonly range: readonly [number, number];
  readonly readings: readonly FamilyReading[];
  /** mean and root mean square of the residuals, over ψ with no flow; null without a fit [-] */
  readonly mean: number | null;
  readonly rms: number | null;
}

/** Speeds of a test that differ by less than this belong together [-]; a rotor sags by a few percent as holes are opened. */
const SAME_SPEED = 0.06;

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function grouped(test: number, readings: readonly FamilyReading[]): ReadingGroup {
  const residuals = readings.flatMap(({ residual }) => (residual === null ? [] : [residual]));
  const rpm = meanOf(readings.map((reading) => reading.rpm));
  return {
    key: `${test}@${Math.round(rpm)}`,
    test,
    rpm,
    range: [Math.min(...readings.map((each) => each.rpm)), Math.max(...readings.map((each) => each.rpm))],
    readings,
    mean: residuals.length > 0 ? meanOf(residuals) : null,
    rms: residuals.length > 0 ? Math.sqrt(meanOf(residuals.map((r) => r * r))) : null,
  };
}

/**
 * The readings by test and speed, slow ones first. A test whose speed followed the load (one voltage, no governor) stays one group.
 *
 * @returns groups: a nominal speed or a wrong tachometer shows as one that is off the others
 */
export function groupsOf(readings: readonly FamilyReading[]): ReadingGroup[] {
  const tests = [...new Set(readings.map((reading) => reading.test))].sort((a, b) => a - b);
  return tests.flatMap((test) => {
    const own = readings.filter((reading) => reading.test === test).sort((a, b) => a.rpm - b.rpm);
    const groups: FamilyReading[][] = [];
    for (const reading of own) {
      const last = groups.at(-1);
      if (last && reading.rpm <= last[last.length - 1].rpm * (1 + SAME_SPEED)) last.push(reading);
      else groups.push([reading]);
    }
    const steady = groups.filter((group) => group.length > 1).length >= groups.length / 2;
    return (steady ? groups : [own]).map((group) => grouped(test, group));
  });
}
