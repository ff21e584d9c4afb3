import { followRun, type RundownInput } from "../../../../shared/physics/rundown.ts";

/** One way to run the throttle, and what becomes of the charge. */
export interface Course {
  readonly key: "full" | "fixed" | "kept";
  /** its steady throttle; of a kept suction the one at the start [-] */
  readonly duty: number;
  /** until the first attitude that it holds at the start lets go, else until the charge ends [s]; null: it holds none */
  readonly holds: number | null;
  /** likewise of the margin that is wanted [s] */
  readonly target: number | null;
  /** of the charge [s] */
  readonly end: number;
  /** hottest moment of the winding [K] */
  readonly hottest: number;
}

type Run = ReturnType<typeof followRun>;

/** Until the first fall below a level, else to the end; null where nothing is held at it from the start. */
function lastsUntil({ attitudes, end }: Run, level: "holds" | "target"): number | null {
  const held = attitudes.map((each) => each[level]).filter(({ state }) => state !== "never-held");
  if (held.length === 0 && attitudes.length > 0) return null;
  return held.reduce((first, { time }) => Math.min(first, time ?? end.time), end.time);
}

function courseOf(key: Course["key"], duty: number, run: Run): Course {
  return {
    key,
    duty,
    holds: lastsUntil(run, "holds"),
    target: lastsUntil(run, "target"),
    end: run.end.time,
    hottest: run.samples.reduce((most, each) => Math.max(most, each.windingTemperature), 0),
  };
}

/** @returns the kept course beside full throttle, and beside the build's own throttle where that is another */
export function coursesOf(input: RundownInput, kept: Run): Course[] {
  const { keep: _kept, ...build } = input;
  const { duty } = input.supply;
  const at = (share: number) => followRun({ ...build, supply: { ...input.supply, duty: share } });
  return [
    courseOf("full", 1, at(1)),
    ...(duty < 1 ? [courseOf("fixed", duty, at(duty))] : []),
    courseOf("kept", kept.keep?.dutyAtStart ?? 1, kept),
  ];
}
