import type { Readings } from "./serialLine.ts";
import type { Wire } from "./useWire.ts";
import { PullWatch } from "./watch.ts";
import { textsOf, type WireMapping } from "./wireRows.ts";

/** What a row is filled with, by the test's columns. */
export type RowTexts = Readonly<Record<string, string>>;

/** A step is another one once a value is off by more than this share of the last [-]. Judgement. */
const ANOTHER = 0.04;

/** The means of the columns that a step is made of, once all of them stand still; null while one moves. */
function steadyStep({ watched }: Wire, mapping: WireMapping): Map<string, number> | null {
  const used = [...watched].filter(([name]) => mapping[name]?.column);
  const plateaus = used.map(([name, each]) => [name, each.plateau()] as const);
  if (used.length === 0 || plateaus.some(([, plateau]) => plateau === null)) return null;
  return new Map(plateaus.map(([name, plateau]) => [name, plateau?.mean ?? 0]));
}

const isAnother = (step: Readings, last: Readings | null): boolean =>
  last === null ||
  [...step].some(([name, value]) => Math.abs(value - (last.get(name) ?? 0)) > ANOTHER * Math.abs(value));

/** Follows an instrument, and says what fills a row by itself. */
export class RowWatch {
  private readonly pulls = new PullWatch();
  private last: Readings | null = null;

  /** @returns the pull that ended with these readings; null while none did */
  pull(readings: Readings, mapping: WireMapping): RowTexts | null {
    const name = [...readings.keys()].find((each) => mapping[each]?.column === "held");
    const pull = name === undefined ? null : this.pulls.push(readings.get(name) ?? 0);
    if (!pull || name === undefined) return null;
    const { unit } = mapping[name];
    const others = new Map([...readings].filter(([each]) => each !== name));
    const loads = new Map([
      ["held", pull.held],
      ["letGo", pull.letGo],
    ]);
    return {
      ...textsOf(others, mapping),
      ...textsOf(loads, { held: { column: "held", unit }, letGo: { column: "letGo", unit } }),
    };
  }

  /** @returns the step that stands still now; null while it moves, or where it is the last one still */
  step(wire: Wire, mapping: WireMapping): RowTexts | null {
    const step = steadyStep(wire, mapping);
    if (!step || !isAnother(step, this.last)) return null;
    this.last = step;
    return textsOf(step, mapping);
  }
}
