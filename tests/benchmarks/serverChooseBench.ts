import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { begin, follow, type Heard } from "./events.ts";
import { millionCombinations } from "./longRequests.ts";
import { withServer } from "./site.ts";
import { median, secondsOf } from "./timing.ts";

const CANCELLED = 5;
/** Share of the combinations that is solved before a search is cancelled. */
const UNDER_WAY = 0.05;

/** Largest time between two events of a stream. */
function largestGap(events: readonly Heard[]): number {
  return Math.max(...events.slice(1).map(({ at }, i) => at - events[i].at));
}

async function whole(address: string) {
  const from = performance.now() / 1000;
  const id = await begin(address, millionCombinations(1.5));
  const events = await follow(address, id);
  const last = events[events.length - 1];
  if (last.event !== "done") throw new Error(`The choosing ended as ${last.event}.`);
  return {
    sets: last.job.sets,
    seconds: last.at - from,
    firstMark: events[0].at - from,
    marks: events.length,
    progressGap: largestGap(events),
  };
}

interface Cancelled {
  /** from the request to the end of its stream [s] */
  readonly told: number;
  /** from the request until another, small question is answered in full [s] */
  readonly free: number;
}

async function cancelled(address: string, run: number): Promise<Cancelled> {
  const id = await begin(address, millionCombinations(1.6 + run / 100));
  let [asked, other] = [0, Promise.resolve(0)];
  const cancel = async () => {
    asked = performance.now() / 1000;
    await fetch(`${address}/api/v1/choose/${id}`, { method: "DELETE" });
    const small = await begin(address, chooseBody({ wants: { targetMargin: 1.6 + run / 100 } }));
    await follow(address, small);
    return performance.now() / 1000;
  };
  const events = await follow(address, id, ({ job }) => {
    if (asked === 0 && job.solved > UNDER_WAY * job.sets) other = cancel();
  });
  const last = events[events.length - 1];
  if (last.event !== "cancelled") throw new Error(`The choosing ended as ${last.event}.`);
  return { told: last.at - asked, free: (await other) - asked };
}

export interface ServerChooseTimes {
  readonly sets: number;
  /** from the question to the last event [s] */
  readonly seconds: number;
  /** from the question to the first event, on a server that was asked nothing before [s] */
  readonly firstMark: number;
  /** events of the stream */
  readonly marks: number;
  /** largest time between two of them [s] */
  readonly progressGap: number;
  /** from the request to cancel until the stream says so, the slowest [s] */
  readonly cancelTold: number;
  /** until another question was answered whole, the slowest and the median [s] */
  readonly cancelFree: number;
  readonly cancelFreeMedian: number;
  /** that other question on a server with nothing to do [s] */
  readonly smallAlone: number;
}

/** A million combinations asked of the built server, its progress followed; and choosings cancelled under way. */
export function timedServerChoose(): Promise<ServerChooseTimes> {
  return withServer(async ({ address }) => {
    const times = await whole(address);
    const smallAlone = await secondsOf(async () =>
      follow(address, await begin(address, chooseBody({ wants: { targetMargin: 2 } }))),
    );
    const all: Cancelled[] = [];
    for (let run = 0; run < CANCELLED; run++) all.push(await cancelled(address, run));
    return {
      ...times,
      cancelTold: Math.max(...all.map(({ told }) => told)),
      cancelFree: Math.max(...all.map(({ free }) => free)),
      cancelFreeMedian: median(all.map(({ free }) => free)),
      smallAlone,
    };
  });
}
