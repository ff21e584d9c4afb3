import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { currentBook } from "#client/state/book.ts";
import { keepStacks, stacks } from "#client/state/undo/stack.ts";
import { redo, undo } from "#client/state/undo/undo.ts";
import { addRecord, correctRecord, removeRecord } from "#client/state/write.ts";
import type { Book } from "#shared/book/book.ts";
import type { Stored } from "#shared/model/record.ts";

type Data = { readonly name: string };
type Saved = Stored<Data>;

/** A server of one collection that keeps every state, as the real one does. */
function fakeServer() {
  const there = new Map<string, Saved>();
  const states = new Map<string, Saved[]>();
  const store = (id: string, revision: number, data: Data): Response => {
    const saved = { id, revision, createdAt: "", updatedAt: "", data };
    there.set(id, saved);
    states.set(id, [...(states.get(id) ?? []), saved]);
    return Response.json(saved);
  };
  const refuse = (status: number) =>
    Response.json({ error: { code: "x", message: "Refused.", fields: [] } }, { status });
  const answer = (method: string, path: string, data: Data, ifMatch: string | null): Response => {
    const [id, what] = path.replace(/^\/api\/v1\/skirts\/?/, "").split("/");
    const now = there.get(id);
    if (method === "POST" && id === "") return store("s1", 1, data);
    if (what === "revisions") return Response.json({ items: states.get(id) ?? [] });
    if (what === "restore") {
      const last = states.get(id)?.at(-1);
      return last && !now ? store(id, last.revision + 1, last.data) : refuse(409);
    }
    if (!now) return refuse(404);
    if (method === "GET") return Response.json(now);
    if (ifMatch !== `"${now.revision}"`) return refuse(412);
    if (method === "PUT") return store(id, now.revision + 1, data);
    there.delete(id);
    return new Response(null, { status: 204 });
  };
  vi.stubGlobal("fetch", async (path: string, { method = "GET", body, headers }: RequestInit) =>
    answer(method, path, body ? JSON.parse(String(body)) : null, new Headers(headers).get("If-Match")),
  );
  return { there, store };
}

let server: ReturnType<typeof fakeServer>;
beforeEach(() => {
  server = fakeServer();
  keepStacks({ done: [], undone: [], present: {} });
  currentBook.value = { skirts: [], tests: [] } as unknown as Book;
});
afterEach(() => {
  currentBook.value = null;
  vi.unstubAllGlobals();
});

const nameNow = () => server.there.get("s1")?.data.name ?? null;
const shown = () => currentBook.value?.skirts.map(({ data }) => data.name);

describe("undo and redo", () => {
  it("go back through adding, correcting and deleting, and forth again, on the server and on the screen", async () => {
    const added = await addRecord<Data>("skirts", { name: "one" });
    const corrected = await correctRecord<Data>("skirts", added, { name: "two" });
    await removeRecord("skirts", corrected);
    expect(nameNow()).toBeNull();
    expect(await undo()).toBe("Undone: deletion of “two”.");
    expect(nameNow()).toBe("two");
    await undo();
    expect([nameNow(), shown()]).toEqual(["one", ["one"]]);
    await undo();
    expect([nameNow(), shown()]).toEqual([null, []]);
    expect(await undo()).toBeNull();
    await redo();
    expect(nameNow()).toBe("one");
    await redo();
    expect(nameNow()).toBe("two");
    expect(await redo()).toBe("Done again: deletion of “two”.");
    expect(nameNow()).toBeNull();
  });

  it("leave alone what was changed elsewhere since, and say so", async () => {
    const added = await addRecord<Data>("skirts", { name: "one" });
    await correctRecord<Data>("skirts", added, { name: "two" });
    server.store("s1", 3, { name: "somebody else's" });
    expect(await undo()).toMatch(/can't be undone\. It was changed elsewhere since/);
    expect(nameNow()).toBe("somebody else's");
  });

  it("something new done after an undo: what was undone can't be done again", async () => {
    const added = await addRecord<Data>("skirts", { name: "one" });
    const two = await correctRecord<Data>("skirts", added, { name: "two" });
    await undo();
    const now = server.there.get("s1") ?? two;
    await correctRecord("skirts", now, { name: "three" });
    expect(stacks.value.undone).toEqual([]);
    await undo();
    expect(nameNow()).toBe("one");
  });
});
