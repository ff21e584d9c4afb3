import type { AddressInfo } from "node:net";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { type ChangeEvent, changeEvent } from "#shared/model/api/book.ts";
import { type Book, freshBook } from "./support/api.ts";
import { samples } from "./support/records.ts";

interface Listening {
  readonly heard: ChangeEvent[];
  /** resolves when that many changes were heard */
  until(count: number): Promise<void>;
  readonly ended: Promise<void>;
}

async function listen({ app, store }: Book): Promise<Listening> {
  const server = app.listen(0);
  const { port } = server.address() as AddressInfo;
  const response = await fetch(`http://127.0.0.1:${port}/api/v1/events`);
  expect(response.headers.get("content-type")).toMatch(/^text\/event-stream/);
  const heard: ChangeEvent[] = [];
  const waiting = new Set<() => void>();
  const read = async () => {
    const decoder = new TextDecoder();
    let text = "";
    for await (const chunk of response.body ?? []) {
      text += decoder.decode(chunk, { stream: true });
      const events = text.split("\n\n");
      text = events.pop() ?? "";
      for (const event of events) {
        const data = /^event: change\ndata: (.*)$/m.exec(event)?.[1];
        if (data) heard.push(changeEvent.parse(JSON.parse(data)));
      }
      for (const wake of waiting) wake();
    }
  };
  const until = async (count: number) => {
    while (heard.length < count) await new Promise<void>((resolve) => waiting.add(resolve));
  };
  expect(store.isEmpty()).toBe(true);
  const ended = read();
  onTestFinished(async () => {
    store.feed.close();
    await ended;
    server.close();
  });
  return { heard, until, ended };
}

describe("the stream of changes", () => {
  it("tells each write once, in order, to every listener", async () => {
    const book = freshBook();
    const laptop = await listen(book);
    const phone = await listen(book);
    const { body } = await book.api.post("/api/v1/motors").send(samples.motors);
    const { id } = body;
    await book.api.put(`/api/v1/motors/${id}`).set("If-Match", '"1"').send(samples.motors).expect(200);
    await book.api.delete(`/api/v1/motors/${id}`).expect(204);
    await book.api.post("/api/v1/bench/empty").expect(200);
    await Promise.all([laptop.until(4), phone.until(4)]);
    expect(laptop.heard).toEqual([
      { collection: "motors", id, revision: 1, change: "created" },
      { collection: "motors", id, revision: 2, change: "replaced" },
      { collection: "motors", id, revision: 2, change: "deleted" },
      { collection: null, id: null, revision: null, change: "emptied" },
    ]);
    expect(phone.heard).toEqual(laptop.heard);
  });

  it("tells nothing of a write that was refused", async () => {
    const book = freshBook();
    const listener = await listen(book);
    await book.api.post("/api/v1/motors").send({ kv: 7800 }).expect(400);
    await book.api.post("/api/v1/surfaces").send(samples.surfaces).expect(201);
    await listener.until(1);
    expect(listener.heard.map(({ collection }) => collection)).toEqual(["surfaces"]);
  });

  it("ends when the server stops", async () => {
    const book = freshBook();
    const listener = await listen(book);
    book.store.feed.close();
    await expect(listener.ended).resolves.toBeUndefined();
  });

  it.each(["/events", "/choose/none/events", "/backup", "/archive", "/motors", "/openapi.json"])(
    "asked for the headers of %s alone: answers and ends, with the status and type of the whole",
    async (path) => {
      const { api, store } = freshBook();
      const { status, headers, text } = await api.head(`/api/v1${path}`);
      expect(status).toBe(path.includes("none") ? 404 : 200);
      expect(text).toBeUndefined();
      if (path === "/events") {
        expect(headers["content-type"]).toMatch(/^text\/event-stream/);
        const subscribe = vi.spyOn(store.feed, "subscribe");
        await api.head(`/api/v1${path}`);
        expect(subscribe).not.toHaveBeenCalled();
      }
      if (path === "/backup") expect(headers["content-type"]).toBe("application/vnd.sqlite3");
    },
  );
});
