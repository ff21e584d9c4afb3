import { once } from "node:events";
import { request as send } from "node:http";
import type { AddressInfo } from "node:net";
import fc from "fast-check";
import { describe, expect, it, onTestFinished } from "vitest";
import { addBook, type Book, freshBook } from "../support/api.ts";
import { type Answer, Judge } from "./answer.ts";
import { type Asked, filled, requestsOf } from "./request.ts";

/** A thousand in every run, always the same; `npm run fuzz` asks for ten thousand, of another seed each time. */
const RUNS = Number(process.env.FUZZ_RUNS ?? 1000);
const SEED = Number(process.env.FUZZ_SEED ?? 20_260_301);
/** A request that takes longer hangs [ms]. */
const HANGS = 30_000;
const MEGABYTE = 1e6;
/** What the process may hold more at the end than after the first half [MB]. */
const FLAT = 120;

/** As with --lan, so that codes are made; asked is this machine's own side. */
const NETWORK = { names: ["192.0.2.7"], port: 4311, fingerprint: "00" };

interface Sent {
  readonly path: string;
  readonly body: string | null;
}

async function listening({ app }: Book): Promise<number> {
  const server = app.listen(0, "127.0.0.1");
  // As the program does: a connection that is just being closed would look like a failure.
  server.keepAliveTimeout = 2 * HANGS;
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  await once(server, "listening");
  return (server.address() as AddressInfo).port;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** Sends a request as it is; of an event stream only the beginning is read. */
function answerTo(port: number, { operation, headers }: Asked, { path, body }: Sent): Promise<Answer> {
  const json = body === null ? {} : { "Content-Type": "application/json" };
  const options = {
    port,
    path: `/api/v1${path}`,
    method: operation.method,
    headers: { ...json, ...headers },
  };
  return new Promise((resolve, reject) => {
    const asked = send({ ...options, host: "127.0.0.1", timeout: HANGS }, (answer) => {
      const type = answer.headers["content-type"] ?? "";
      const status = answer.statusCode ?? 0;
      if (type.startsWith("text/event-stream")) {
        asked.destroy();
        resolve({ status, type, body: undefined });
        return;
      }
      const chunks: Buffer[] = [];
      answer.on("data", (chunk: Buffer) => chunks.push(chunk));
      answer.on("end", () => resolve({ status, type, body: parsed(Buffer.concat(chunks).toString()) }));
    });
    asked.on("timeout", () => asked.destroy(new Error("no answer in time")));
    asked.on("error", reject);
    asked.end(body ?? undefined);
  });
}

/** Puts parts, a build and a pull into the book. @returns their ids by collection */
async function stocked(book: Book): Promise<Map<string, string[]>> {
  const { parts, build, pull } = await addBook(book);
  const ids = new Map(Object.entries(parts).map(([key, id]) => [`${key}s`, [id]]));
  return ids.set("builds", [build.id]).set("tests", [pull.id]);
}

const KEPT = 20;

/** Ids that the book has, as far as its answers say; what was deleted or emptied is put in anew. */
async function keepUp(book: Book, ids: Map<string, string[]>, { operation }: Asked, answer: Answer) {
  const [, collection] = operation.path.split("/");
  const known = ids.get(collection) ?? [];
  const { id } = (answer.body ?? {}) as { id?: string };
  if ((answer.status === 201 || answer.status === 202) && id !== undefined)
    ids.set(collection, [...known.slice(-KEPT), id]);
  if (answer.status === 204) ids.set(collection, known.slice(0, -1));
  const wasReplaced = answer.status < 300 && operation.method === "POST" && /bench|archive/.test(collection);
  if (wasReplaced || ids.get(collection)?.length === 0)
    for (const [name, fresh] of await stocked(book)) ids.set(name, fresh);
}

describe("every operation of the API, asked rightly, nearly rightly and hostilely", () => {
  it(
    `${RUNS} times: never fails, never hangs, never answers what its description doesn't say`,
    async () => {
      const book = freshBook(undefined, undefined, NETWORK);
      const ids = await stocked(book);
      const port = await listening(book);
      const { body: description } = await book.api.get("/api/v1/openapi.json");
      const judge = new Judge(description);
      const memory: number[] = [];
      const statuses = new Map<number, number>();
      const ask = async (asked: Asked) => {
        const sent = filled(asked, ids);
        const { operation } = asked;
        const what = `${operation.method} ${sent.path} ${JSON.stringify(asked.headers)} ${sent.body?.slice(0, 3000)}`;
        const answer = await answerTo(port, asked, sent).catch((error: Error) => {
          throw new Error(`${error.message}: ${what}`);
        });
        statuses.set(answer.status, (statuses.get(answer.status) ?? 0) + 1);
        expect(
          judge.fault(operation, answer),
          `${what}\n${JSON.stringify(answer.body)?.slice(0, 1500)}`,
        ).toBeNull();
        await keepUp(book, ids, asked, answer);
        memory.push(process.memoryUsage.rss() / MEGABYTE);
      };
      const property = fc.asyncProperty(requestsOf(description), ask);
      await fc.assert(property, {
        numRuns: RUNS,
        seed: SEED,
        endOnFailure: true,
        interruptAfterTimeLimit: RUNS * 600,
      });
      // A run that only ever sees refusals, or only ever succeeds, tries nothing.
      expect(statuses.get(200) ?? 0).toBeGreaterThan(RUNS / 20);
      expect(statuses.get(201) ?? 0).toBeGreaterThan(RUNS / 100);
      expect(statuses.get(400) ?? 0).toBeGreaterThan(RUNS / 10);
      expect(Math.max(...memory) - Math.max(...memory.slice(0, memory.length / 2))).toBeLessThan(FLAT);
      expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    },
    RUNS * 600,
  );
});
