import { setTimeout } from "node:timers/promises";
import { LONG_REQUESTS, type LongRequest, searchRequests } from "./longRequests.ts";
import { withServer } from "./site.ts";
import { percentile } from "./timing.ts";

const PAUSE = 5;
const MILLISECONDS = 1000;
const WARM = 20;

/** How long GET /bench took while a request ran. */
export interface HeldUp {
  readonly name: string;
  /** of the long request [s] */
  readonly took: number;
  readonly asked: number;
  /** of GET /bench [s] */
  readonly p95: number;
  readonly slowest: number;
}

async function askOnce(address: string): Promise<number> {
  const start = performance.now();
  const answer = await fetch(`${address}/api/v1/bench`);
  await answer.arrayBuffer();
  return (performance.now() - start) / MILLISECONDS;
}

async function heldUpBy({ name, send }: LongRequest, address: string): Promise<HeldUp> {
  const start = performance.now();
  let took: number | null = null;
  const done = send(address).then(() => {
    took = (performance.now() - start) / MILLISECONDS;
  });
  const times: number[] = [];
  while (took === null) {
    times.push(await askOnce(address));
    await Promise.race([setTimeout(PAUSE), done]);
  }
  return { name, took, asked: times.length, p95: percentile(times, 0.95), slowest: Math.max(...times) };
}

export interface HoldUps {
  readonly requests: readonly HeldUp[];
  /** the largest 95th percentile of them [s] */
  readonly worst: number;
}

/** The book's state asked of the built server over and over, while each long request runs in turn. */
export function timedHoldUps(): Promise<HoldUps> {
  return withServer(async ({ address }) => {
    for (let i = 0; i < WARM; i++) await askOnce(address);
    const requests: HeldUp[] = [];
    for (const each of [...LONG_REQUESTS, ...searchRequests()]) requests.push(await heldUpBy(each, address));
    return { requests, worst: Math.max(...requests.map(({ p95 }) => p95)) };
  });
}
