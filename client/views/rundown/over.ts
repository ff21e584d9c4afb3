import { crossedJoints, type JointsUnder } from "../../../shared/decide/joints/crossed.ts";
import { cellAt } from "../../../shared/physics/cells/cell.ts";
import type { PredictInput } from "../../../shared/physics/predict.ts";
import { followRun, type RundownInput } from "../../../shared/physics/rundown.ts";
import { jointText } from "../../ui/crossing/words.ts";
import type { Track } from "./answer.ts";
import type { Named } from "./question.ts";

/** The same run with the lip over the hardest joint of the surface. */
export interface OverJoint {
  /** "the glazing bar" */
  readonly name: string;
  /** how deep and wide it is, and how it is met */
  readonly text: string;
  readonly tracks: readonly Track[];
}

/** The build at the start of its run. */
function startOf({ pack, startCharge = 1, ...input }: RundownInput): PredictInput {
  const { cell, ...wiring } = pack;
  const { voltage, resistance } = cellAt(cell, startCharge);
  const supplied = { ...wiring, cellResistance: resistance, openCircuitVoltage: voltage };
  return { ...input, pack: supplied } as PredictInput;
}

/** @returns attitudes of a run with when each is lost; what the run doesn't answer for is left out */
export function tracksOf(run: ReturnType<typeof followRun>, all: readonly Named[]): Track[] {
  return all.flatMap((each) => {
    const place = run.attitudes.findIndex(({ angle }) => angle === each.angle);
    if (place < 0) return [];
    const { holds, target, judged } = run.attitudes[place];
    return [{ ...each, holds, target, margins: run.margins[place], ...(judged ? { judged } : {}) }];
  });
}

/** @returns the run as if the lip stood over the hardest joint all through; null without a joint @throws as {@link followRun} */
export function overHardest(
  input: RundownInput,
  joints: JointsUnder | null,
  all: readonly Named[],
): OverJoint | null {
  if (!joints) return null;
  const [hardest] = crossedJoints(startOf(input), joints, []);
  if (!hardest) return null;
  const run = followRun({ ...input, skirt: hardest.build.skirt });
  return { name: hardest.joint.name, text: jointText(hardest), tracks: tracksOf(run, all) };
}
