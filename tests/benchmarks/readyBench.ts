import { join } from "node:path";
import { inFolder, startServer } from "./site.ts";
import { median } from "./timing.ts";

const STARTS = 5;

export interface ReadyTimes {
  /** on no data file: it is made and the demo put in [s] */
  readonly first: number;
  /** on that file, median [s] */
  readonly again: number;
}

/** How soon the built server says that it is ready. */
export function timedReady(): Promise<ReadyTimes> {
  return inFolder(async (folder) => {
    const started = async () => {
      const { readyAfter, stop } = await startServer(join(folder, "bench.db"));
      await stop();
      return readyAfter;
    };
    const first = await started();
    const again: number[] = [];
    for (let i = 0; i < STARTS; i++) again.push(await started());
    return { first, again: median(again) };
  });
}
