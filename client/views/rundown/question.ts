import type { Bench } from "../../../shared/book/resolve.ts";
import type { RundownInput } from "../../../shared/physics/rundown.ts";
import { attitudeRows, type Outcome } from "../../state/outcome.ts";

/** An attitude to answer for. */
export interface Named {
  readonly key: string;
  /** as the table says it: "Roof pane" */
  readonly title: string;
  /** as a sentence says it: "the roof pane" */
  readonly name: string;
  readonly angle: number;
}

/** What is asked of a run, all of it plain data: it goes to another thread. */
export interface Question {
  readonly input: RundownInput;
  readonly named: readonly Named[];
  readonly windingEstimated: boolean;
}

/** What the view's own handles set. */
export interface Asked {
  /** z₀ [-] */
  readonly startCharge: number;
  readonly targetMargin: number;
}

/** @returns the run that a build asks for; null where the build has no numbers yet */
export function questionOf(bench: Bench, outcome: Outcome, asked: Asked): Question | null {
  const { build, resolved } = outcome;
  const pack = bench.packs.find((each) => each.id === build.pack)?.data;
  if (!resolved?.input || !resolved.motor || !pack) return null;
  const { openCircuitVoltage: _at, cellResistance: _of, ...wiring } = resolved.input.pack;
  const { thermalTimeConstant, basis } = resolved.motor.thermal;
  return {
    input: {
      ...resolved.input,
      motor: { ...resolved.input.motor, thermalTimeConstant },
      pack: { ...wiring, cell: pack.cell },
      ...asked,
    },
    windingEstimated: basis === "estimated",
    named: attitudeRows(outcome).map(({ title, name, angle }) => ({
      key: `at ${angle}`,
      title,
      name,
      angle,
    })),
  };
}
