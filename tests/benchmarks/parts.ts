import { timedArchive } from "./archiveBench.ts";
import { timedChoose } from "./chooseBench.ts";
import { timedCosts } from "./costBench.ts";
import { timedFit } from "./fitBench.ts";
import { timedGiving } from "./givingBench.ts";
import { timedHoldUps } from "./holdUpBench.ts";
import { timedJob } from "./jobBench.ts";
import { timedLists } from "./listBench.ts";
import { timedLoad } from "./loadBench.ts";
import { timedLongStart } from "./longStartBench.ts";
import { timedMap } from "./mapBench.ts";
import { timedMass } from "./massBench.ts";
import { timedReady } from "./readyBench.ts";
import { timedScreen } from "./screenBench.ts";
import { timedServerChoose } from "./serverChooseBench.ts";
import { timedSweep } from "./sweepBench.ts";
import { timedUncertainty } from "./uncertaintyBench.ts";

/** What is measured, each in a process of its own; `file` is the program, to start threads with. */
const PARTS = {
  sweep: timedSweep,
  choose: timedChoose,
  chooseGiving: timedGiving,
  chooseJob: timedJob,
  chooseServer: timedServerChoose,
  monteCarlo: timedUncertainty,
  fit: timedFit,
  costs: timedCosts,
  mass: timedMass,
  map: timedMap,
  screen: timedScreen,
  serverReady: timedReady,
  listPage: timedLists,
  longStart: timedLongStart,
  archive: timedArchive,
  holdUps: timedHoldUps,
  load: timedLoad,
} as const;

export type PartName = keyof typeof PARTS;
export const PART_NAMES = Object.keys(PARTS) as readonly PartName[];

type Measured = { readonly [Name in PartName]: Awaited<ReturnType<(typeof PARTS)[Name]>> };

/** Everything measured in one run. */
export interface Results extends Measured {
  readonly machine: { readonly cores: number; readonly node: string; readonly date: string };
}

const isPart = (name: string): name is PartName => name in PARTS;

/** @throws {Error} on a name that is none of {@link PART_NAMES} */
export async function runPart(name: string, file: string): Promise<unknown> {
  if (!isPart(name)) throw new Error(`There is no part ${name}; there are ${PART_NAMES.join(", ")}.`);
  return PARTS[name](file);
}
