import { once } from "node:events";
import { createReadStream, createWriteStream, statSync } from "node:fs";
import { type IncomingMessage, request } from "node:http";
import { join } from "node:path";
import { Readable } from "node:stream";
import { text } from "node:stream/consumers";
import { pipeline } from "node:stream/promises";
import { setTimeout } from "node:timers/promises";
import { fillLongBook } from "./longBook.ts";
import { memoryOf, peakOf, processorOf } from "./processes.ts";
import { inFolder, type Running, startServer } from "./site.ts";
import { secondsOf } from "./timing.ts";

const BYTES_PER_MEGABYTE = 1e6;
/** Until a server that has just begun is at rest [ms]. */
const REST = 3_000;

export interface Passed {
  /** [s] */
  readonly seconds: number;
  /** that the server worked for it, on all cores together [s]; null where the system does not say */
  readonly processor: number | null;
  /** the most that the server held beyond what it held at rest [MB]; null where the system does not say */
  readonly memory: number | null;
}

export interface ArchiveTimes {
  /** of the archive [MB] */
  readonly size: number;
  readonly out: Passed;
  readonly in: Passed;
}

async function save(address: string, file: string): Promise<void> {
  const { body, ok } = await fetch(`${address}/api/v1/archive`);
  if (!ok || !body) throw new Error("There is no archive.");
  await pipeline(Readable.fromWeb(body), createWriteStream(file));
}

/** By a client that waits as long as it takes. */
async function takeIn(address: string, file: string): Promise<void> {
  const asked = request(`${address}/api/v1/archive?replace=true`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
  });
  const answered = once(asked, "response");
  await pipeline(createReadStream(file), asked);
  const [answer] = (await answered) as [IncomingMessage];
  if (answer.statusCode !== 201)
    throw new Error(`${answer.statusCode}: ${(await text(answer)).slice(0, 500)}`);
  answer.resume();
}

const beyond = (value: number | null, start: number | null): number | null =>
  value === null || start === null ? null : value - start;

/** Does something on a server of its own, and sees what it held at most. */
async function passed(file: string, work: (running: Running) => Promise<void>): Promise<Passed> {
  const running = await startServer(file);
  await setTimeout(REST);
  const atRest = memoryOf(running.pid);
  const before = processorOf(running.pid);
  const seconds = await secondsOf(() => work(running));
  const after = processorOf(running.pid);
  const most = peakOf(running.pid);
  await running.stop();
  return { seconds, processor: beyond(after, before), memory: beyond(most, atRest) };
}

/** The archive of a book of many years out of one server and into another. */
export function timedArchive(): Promise<ArchiveTimes> {
  return inFolder(async (folder) => {
    const [from, to] = [join(folder, "from.db"), join(folder, "to.db")];
    const archive = join(folder, "archive.json");
    fillLongBook(from);
    const out = await passed(from, ({ address }) => save(address, archive));
    const size = statSync(archive).size / BYTES_PER_MEGABYTE;
    return { size, out, in: await passed(to, ({ address }) => takeIn(address, archive)) };
  });
}
