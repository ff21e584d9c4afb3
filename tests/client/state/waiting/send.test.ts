import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { connected } from "#client/state/events.ts";
import { notice } from "#client/state/notice.ts";
import { deleteRecord, saveRecord } from "#client/state/saveRecord.ts";
import { saveProblem } from "#client/state/sendRecord.ts";
import { deletionWaits, dropWaiting, waiting, waitingFor, waitingUnder } from "#client/state/waiting/list.ts";
import { arrived, sendingProblem, sendWaiting } from "#client/state/waiting/send.ts";
import { withdraw } from "#client/state/withdraw.ts";
import type { Stored } from "#shared/model/record.ts";

/** A server that stores once what comes under one key, as server/store/sentBefore.ts does. */
class Server {
  isGone = false;
  /** the next answers are lost on their way, after the server did what was asked */
  losesAnswers = false;
  /** the next write is answered so, and stores nothing */
  refuses: { status: number; code?: string; message: string } | null = null;
  readonly records = new Map<string, Stored<unknown>>();
  removals = 0;
  readonly #byKey = new Map<string, { readonly said: string; readonly stored: Stored<unknown> }>();
  /** done while a write is on its way */
  meanwhile = () => {};

  readonly fetch = async (path: string, { method = "GET", body, headers }: RequestInit = {}) => {
    if (this.isGone) throw new TypeError("Failed to fetch");
    if (method === "GET") return Response.json({ status: "ok", version: "1" });
    this.meanwhile();
    const answer = this.#write(
      method,
      path,
      method === "DELETE" ? "deleted" : String(body),
      new Headers(headers),
    );
    if (this.losesAnswers) throw new TypeError("Failed to fetch");
    return answer;
  };

  #write(method: string, path: string, body: string, headers: Headers): Response {
    const key = headers.get("Idempotency-Key") ?? "";
    const known = this.#byKey.get(key);
    if (known && known.said !== path + body) return this.#refusal(422, "key-reused", "came before");
    if (known && method === "DELETE") return new Response(null, { status: 204 });
    if (known) return Response.json(known.stored);
    if (this.refuses) return this.#refusal(this.refuses.status, "no", this.refuses.message);
    if (method === "DELETE") return this.#remove(path, key, headers);
    const id = path.split("/")[4] ?? `made-${this.records.size + 1}`;
    const revision = (this.records.get(id)?.revision ?? 0) + 1;
    if (headers.has("If-Match") && headers.get("If-Match") !== `"${revision - 1}"`)
      return this.#refusal(412, "changed-meanwhile", "changed meanwhile");
    const stored = { id, revision, createdAt: "", updatedAt: "", data: JSON.parse(body) };
    this.records.set(id, stored);
    this.#byKey.set(key, { said: path + body, stored });
    return Response.json(stored);
  }

  #remove(path: string, key: string, headers: Headers): Response {
    const id = path.split("/")[4];
    const record = this.records.get(id);
    if (!record) return this.#refusal(404, "unknown", "no such record");
    if (headers.get("If-Match") !== `"${record.revision}"`)
      return this.#refusal(412, "changed-meanwhile", "changed meanwhile");
    this.records.delete(id);
    this.removals++;
    this.#byKey.set(key, { said: `${path}deleted`, stored: record });
    return new Response(null, { status: 204 });
  }

  #refusal(status: number, code: string, message: string): Response {
    const fields = [{ path: "name", message }];
    return Response.json({ error: { code, message, fields } }, { status });
  }

  get said(): unknown[] {
    return [...this.records.values()].map(({ data, revision }) => [
      (data as { name: string }).name,
      revision,
    ]);
  }
}

let server: Server;
let isFull: boolean;
beforeEach(() => {
  server = new Server();
  isFull = false;
  const kept = new Map<string, string>();
  vi.stubGlobal("fetch", server.fetch);
  vi.stubGlobal("navigator", {});
  vi.stubGlobal("localStorage", {
    get length() {
      return kept.size;
    },
    key: (i: number) => [...kept.keys()][i] ?? null,
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (isFull) throw new DOMException("full", "QuotaExceededError");
      kept.set(key, text);
    },
    removeItem: (key: string) => void kept.delete(key),
  });
  for (const { key } of waiting.value) dropWaiting(key);
  connected.value = true;
  arrived.value = [];
  notice.value = null;
});
afterEach(() => {
  waiting.value = [];
  connected.value = true;
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const save = (name: string) => saveRecord("skirts", null, { name }).outcome;
const names = () => waiting.value.map(({ data }) => data.name);

/** Saves something that the server stored, and whose answer was lost. */
async function savedUnanswered(name: string): Promise<void> {
  server.losesAnswers = true;
  expect(await save(name)).toEqual({ waits: true });
  server.losesAnswers = false;
}

describe("a record that is saved", () => {
  it("with a server, is stored and waits for nothing", async () => {
    expect(await save("round")).toMatchObject({ stored: { revision: 1 } });
    expect(waiting.value).toEqual([]);
  });

  it("without one, waits, and is stored once when the server is back; what arrived is said", async () => {
    server.isGone = true;
    expect(await save("round")).toEqual({ waits: true });
    expect(names()).toEqual(["round"]);
    await sendWaiting();
    expect(names()).toEqual(["round"]);
    server.isGone = false;
    await Promise.all([sendWaiting(), sendWaiting()]);
    expect(server.said).toEqual([["round", 1]]);
    expect(names()).toEqual([]);
    expect(arrived.value.map(({ data }) => data.name)).toEqual(["round"]);
  });

  it("while the server is known to be gone, waits without being sent", async () => {
    connected.value = false;
    server.isGone = true;
    await save("round");
    await sendWaiting();
    expect(waiting.value[0].sent).toBeNull();
  });

  it("and stored, though the answer was lost, is not stored again", async () => {
    await savedUnanswered("round");
    await sendWaiting();
    expect(server.said).toEqual([["round", 1]]);
    expect(names()).toEqual([]);
  });

  it("in a browser that keeps nothing, is said to wait nowhere", async () => {
    server.isGone = true;
    isFull = true;
    const error = await save("round").catch((thrown) => thrown);
    expect(saveProblem(error, true)).toMatch(/does not answer.*It can't wait on this device/);
    expect(saveProblem(error, true)).not.toMatch(/is kept/);
  });

  it("is sent in the order in which it was saved", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: 1000 });
    server.isGone = true;
    for (const name of ["first", "second", "third"]) {
      vi.setSystemTime(Date.now() + 1);
      await save(name);
    }
    server.isGone = false;
    await sendWaiting();
    expect(server.said.map((each) => (each as unknown[])[0])).toEqual(["first", "second", "third"]);
  });
});

describe("a record that waits and is corrected", () => {
  const again = (name: string) => saveRecord("skirts", null, { name }, waiting.value[0]).outcome;

  it("before it was ever sent, is stored as it says now", async () => {
    connected.value = false;
    server.isGone = true;
    await save("round");
    expect(await again("oval")).toEqual({ waits: true });
    server.isGone = false;
    await sendWaiting();
    expect(server.said).toEqual([["oval", 1]]);
  });

  it("after it was stored without an answer, is stored once, and corrected", async () => {
    await savedUnanswered("round");
    server.isGone = true;
    await again("oval");
    server.isGone = false;
    await sendWaiting();
    expect(server.said).toEqual([["oval", 2]]);
    expect(names()).toEqual([]);
  });

  it("in a form that was open while it was sent, corrects what was stored", async () => {
    server.isGone = true;
    await save("round");
    const opened = waiting.value[0];
    server.isGone = false;
    await sendWaiting();
    expect(await saveRecord("skirts", null, { name: "oval" }, opened).outcome).toMatchObject({
      stored: { revision: 2 },
    });
    expect(server.said).toEqual([["oval", 2]]);
  });

  it("and discarded on its way, waits on as it was", async () => {
    server.isGone = true;
    await save("round");
    const { outcome, discard } = saveRecord("skirts", null, { name: "oval" }, waiting.value[0]);
    discard();
    await outcome;
    expect(names()).toEqual(["round"]);
  });
});

describe("a record that the server does not take", () => {
  it("stays with the reason, is not sent again by itself, and holds nothing else up", async () => {
    server.isGone = true;
    await save("bad");
    await save("good");
    server.isGone = false;
    server.refuses = { status: 422, message: "no such surface" };
    await sendWaiting();
    expect(waiting.value.map(({ refusal }) => refusal?.message)).toEqual([
      "no such surface",
      "no such surface",
    ]);
    server.refuses = null;
    await sendWaiting();
    expect(server.said).toEqual([]);
    const bad = waiting.value.find(({ data }) => data.name === "bad") ?? null;
    await saveRecord("skirts", null, { name: "put right" }, bad).outcome;
    expect(server.said).toEqual([["put right", 1]]);
    expect(names()).toEqual(["good"]);
  });

  it("rejects with the server's word where it is saved from its form", async () => {
    server.isGone = true;
    await save("bad");
    server.isGone = false;
    server.refuses = { status: 422, message: "no such surface" };
    const saved = saveRecord("skirts", null, { name: "worse" }, waiting.value[0]).outcome;
    await expect(saved).rejects.toMatchObject({ status: 422, message: "no such surface" });
    expect(names()).toEqual(["worse"]);
  });

  it("because it was corrected elsewhere meanwhile, goes out over the other once its form has read that", async () => {
    server.records.set("lip", {
      id: "lip",
      revision: 5,
      createdAt: "",
      updatedAt: "",
      data: { name: "theirs" },
    });
    const before = { id: "lip", revision: 4, createdAt: "", updatedAt: "", data: { name: "was" } };
    server.isGone = true;
    await saveRecord("skirts", before, { name: "mine" }).outcome;
    server.isGone = false;
    await sendWaiting();
    expect(waiting.value[0].refusal?.status).toBe(412);
    const newer = { ...before, revision: 5 };
    await saveRecord("skirts", newer, { name: "both" }, waiting.value[0]).outcome;
    expect(server.said).toEqual([["both", 6]]);
    expect(names()).toEqual([]);
  });

  it.each([
    [503, "The disk is full."],
    [401, "This device is not paired."],
    [500, "The server failed."],
  ])("with status %s, which is not about it, waits on, and the reason is said", async (status, message) => {
    server.isGone = true;
    await save("round");
    server.isGone = false;
    server.refuses = { status, message };
    await sendWaiting();
    expect(waiting.value[0].refusal).toBeNull();
    expect(sendingProblem.value).toBe(message);
    server.refuses = null;
    await sendWaiting();
    expect(sendingProblem.value).toBeNull();
    expect(server.said).toEqual([["round", 1]]);
  });
});

describe("a record whose answer was lost more than six days ago", () => {
  it("is not sent again before its maker has looked, and then once", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: 0 });
    server.losesAnswers = true;
    server.refuses = { status: 503, message: "not stored" };
    await save("round");
    server.losesAnswers = false;
    server.refuses = null;
    vi.setSystemTime(6 * 24 * 3600 * 1000 + 1);
    await sendWaiting();
    expect(server.said).toEqual([]);
    const [old] = waiting.value;
    expect(old.refusal?.message).toMatch(/may be in the book/);
    await saveRecord("skirts", null, { name: "round" }, old).outcome;
    expect(server.said).toEqual([["round", 1]]);
    expect(waitingUnder(old.key)).toBeNull();
  });
});

describe("a record that is discarded while it is being sent", () => {
  it("and was stored, is said to be in the book", async () => {
    server.isGone = true;
    await save("round");
    server.isGone = false;
    server.meanwhile = () => dropWaiting(waiting.value[0].key);
    await sendWaiting();
    expect(server.said).toEqual([["round", 1]]);
    expect(notice.value).toMatch(/is in the book: delete it there/);
  });
});

describe("a record that is deleted", () => {
  const LIP = { id: "lip", revision: 3, createdAt: "", updatedAt: "", data: { name: "lip" } };
  const remove = () => deleteRecord("skirts", LIP);
  beforeEach(() => {
    server.records.set("lip", LIP);
  });

  it("with a server, is gone, and nothing waits", async () => {
    expect(await remove()).toEqual({ deleted: true });
    expect([server.removals, waiting.value]).toEqual([1, []]);
  });

  it("without one, is deleted once when the server is back, and that is said", async () => {
    server.isGone = true;
    expect(await remove()).toEqual({ waits: true });
    expect(deletionWaits("skirts", "lip")).toBe(true);
    expect(waitingFor("skirts", "lip")).toBeNull();
    server.isGone = false;
    await Promise.all([sendWaiting(), sendWaiting()]);
    expect([server.removals, server.records.has("lip"), waiting.value]).toEqual([1, false, []]);
    expect(arrived.value.map(({ deletes }) => deletes)).toEqual([true]);
  });

  it("and whose answer was lost, is not deleted again after it was brought back meanwhile", async () => {
    server.losesAnswers = true;
    expect(await remove()).toEqual({ waits: true });
    server.losesAnswers = false;
    server.records.set("lip", { ...LIP, revision: 4 });
    await sendWaiting();
    expect([server.removals, server.records.has("lip"), waiting.value]).toEqual([1, true, []]);
  });

  it("by somebody else as well, waits no longer", async () => {
    server.isGone = true;
    await remove();
    server.isGone = false;
    server.records.delete("lip");
    await sendWaiting();
    expect(waiting.value).toEqual([]);
  });

  it("and corrected elsewhere meanwhile, stays, and the refusal is said", async () => {
    server.isGone = true;
    await remove();
    server.isGone = false;
    server.records.set("lip", { ...LIP, revision: 4 });
    await sendWaiting();
    expect(server.records.has("lip")).toBe(true);
    expect(waiting.value.map(({ refusal }) => refusal?.status)).toEqual([412]);
  });

  it("takes the place of a correction that waited, and of a deletion that was refused", async () => {
    server.isGone = true;
    await saveRecord("skirts", LIP, { name: "corrected" }).outcome;
    await remove();
    await remove();
    expect(waiting.value.map(({ deletes }) => deletes)).toEqual([true]);
  });
});

describe("a record that is put out of use without a server", () => {
  const LIP = { id: "lip", revision: 3, createdAt: "", updatedAt: "", data: { name: "lip" } };

  it("waits, and is retired once when the server is back", async () => {
    server.records.set("lip", LIP);
    server.isGone = true;
    expect(await withdraw("skirts", LIP, "worn")).toEqual({ stored: null, problem: null });
    server.isGone = false;
    await sendWaiting();
    expect(server.records.get("lip")).toMatchObject({ revision: 4, data: { name: "lip", retired: "worn" } });
  });

  it("over a correction that waits, keeps that correction", async () => {
    server.records.set("lip", LIP);
    server.isGone = true;
    await saveRecord("skirts", LIP, { name: "wider lip" }).outcome;
    await withdraw("skirts", LIP, "worn");
    expect(waiting.value).toHaveLength(1);
    server.isGone = false;
    await sendWaiting();
    expect(server.records.get("lip")?.data).toEqual({ name: "wider lip", retired: "worn" });
  });
});
