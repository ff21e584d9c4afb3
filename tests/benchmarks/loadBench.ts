import { Agent, get, request } from "node:http";
import { setTimeout } from "node:timers/promises";
import { begin } from "./events.ts";
import { millionCombinations } from "./longRequests.ts";
import { handlesOf, processorOf } from "./processes.ts";
import { type Running, withServer } from "./site.ts";
import { median, percentile } from "./timing.ts";

const [READERS, WRITERS, STREAMS] = [100, 10, 500];
const SECONDS = 30;
const MILLISECONDS = 1000;
const SETTLE = 1_500;
/** Beside the first, which leaves the engine's own warmth. */
const ROUNDS = 5;
const LISTS = 200;
const PATHS = ["/bench", "/tests?limit=50", "/builds", "/rotors/swept-nine", "/motors"];
const SURFACE = JSON.stringify({ name: "Pane under load", wheelFriction: 0.7 });

/** One request over a kept connection. @returns how long it took [s] @throws {Error} on any answer but success */
function timed(agent: Agent, address: string, path: string, body?: string): Promise<number> {
  const start = performance.now();
  const options = { agent, method: body === undefined ? "GET" : "POST" };
  const headers = body === undefined ? {} : { "Content-Type": "application/json" };
  return new Promise((resolve, reject) => {
    const asked = request(`${address}/api/v1${path}`, { ...options, headers }, (answer) => {
      answer.resume();
      answer.once("end", () => {
        if ((answer.statusCode ?? 0) >= 300) reject(new Error(`${path}: ${answer.statusCode}`));
        else resolve((performance.now() - start) / MILLISECONDS);
      });
    });
    asked.once("error", reject);
    asked.end(body);
  });
}

/** A client that asks without a pause until its time is over. */
async function client(agent: Agent, address: string, until: number, i: number, body?: string) {
  const times: number[] = [];
  for (let turn = i; performance.now() < until; turn++)
    times.push(await timed(agent, address, body ? "/surfaces" : PATHS[turn % PATHS.length], body));
  return times;
}

async function crowd({ address, pid }: Running) {
  const agent = new Agent({ keepAlive: true });
  const until = performance.now() + SECONDS * MILLISECONDS;
  const many = (count: number, body?: string) =>
    Promise.all(Array.from({ length: count }, (_, i) => client(agent, address, until, i, body)));
  const before = processorOf(pid);
  const [reads, writes] = await Promise.all([many(READERS), many(WRITERS, SURFACE)]);
  const after = processorOf(pid);
  agent.destroy();
  const answered = reads.flat().length + writes.flat().length;
  const processor = before === null || after === null ? null : (after - before) / answered;
  return { reads: reads.flat(), writes: writes.flat(), processor };
}

/** @returns the median time of a list's page [s] */
async function listTime(address: string): Promise<number> {
  const agent = new Agent({ keepAlive: true });
  const times: number[] = [];
  for (let i = 0; i < LISTS; i++) times.push(await timed(agent, address, "/tests?limit=50"));
  agent.destroy();
  return median(times);
}

async function listsBesideSearch(address: string): Promise<number> {
  const id = await begin(address, millionCombinations(1.7));
  const time = await listTime(address);
  await fetch(`${address}/api/v1/choose/${id}`, { method: "DELETE" });
  return time;
}

function openStream(address: string): Promise<() => void> {
  return new Promise((resolve, reject) => {
    const asked = get(`${address}/api/v1/events`, { agent: false }, (answer) => {
      answer.resume();
      resolve(() => asked.destroy());
    });
    asked.once("error", reject);
  });
}

/** What event streams leave behind that were opened and left again and again. */
export interface StreamsKeep {
  readonly rounds: number;
  /** in use beyond what the first round left [MB] */
  readonly memory: number;
  /** null where the system does not say */
  readonly handles: number | null;
}

/** Opens many event streams and leaves them. */
async function streamsLeft({ address, pid, held }: Running): Promise<StreamsKeep> {
  const round = async () => {
    const close = await Promise.all(Array.from({ length: STREAMS }, () => openStream(address)));
    for (const leave of close) leave();
    await setTimeout(SETTLE);
    return { memory: await held(), handles: handlesOf(pid) };
  };
  const first = await round();
  let last = first;
  for (let i = 0; i < ROUNDS; i++) last = await round();
  return {
    rounds: ROUNDS,
    memory: last.memory - first.memory,
    handles: first.handles === null || last.handles === null ? null : last.handles - first.handles,
  };
}

export interface LoadTimes {
  readonly readers: number;
  readonly writers: number;
  readonly seconds: number;
  readonly streams: number;
  readonly requestsPerSecond: number;
  /** of the server for a request [s]; null where the system does not say */
  readonly processor: number | null;
  /** 99th percentiles [s] */
  readonly reads: number;
  readonly writes: number;
  /** of a list's page, alone and while a search runs [s] */
  readonly list: number;
  readonly listBesideSearch: number;
  readonly streamsKeep: StreamsKeep;
}

/** Many clients at once on the built server with the demo; any error ends it. */
export function timedLoad(): Promise<LoadTimes> {
  return withServer(async (running) => {
    const { address } = running;
    await listTime(address);
    const list = await listTime(address);
    const listBesideSearch = await listsBesideSearch(address);
    const streamsKeep = await streamsLeft(running);
    const { reads, writes, processor } = await crowd(running);
    return {
      readers: READERS,
      writers: WRITERS,
      seconds: SECONDS,
      streams: STREAMS,
      requestsPerSecond: (reads.length + writes.length) / SECONDS,
      processor,
      reads: percentile(reads, 0.99),
      writes: percentile(writes, 0.99),
      list,
      listBesideSearch,
      streamsKeep,
    };
  });
}
