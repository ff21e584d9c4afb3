import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { ApiError } from "#client/state/api.ts";
import { currentBook } from "#client/state/book.ts";
import { notice } from "#client/state/notice.ts";
import { saveProblem, sendRecord } from "#client/state/sendRecord.ts";
import type { Book } from "#shared/book/book.ts";

interface Sent {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
  readonly ifMatch: string | null;
  readonly answer: (response: Response) => void;
  readonly fail: (error: unknown) => void;
}

let sent: Sent[];
beforeEach(() => {
  sent = [];
  notice.value = null;
  const empty = { rotors: [], motors: [], packs: [], skirts: [], surfaces: [], tests: [], builds: [] };
  currentBook.value = empty as unknown as Book;
  vi.stubGlobal(
    "fetch",
    (path: string, { method = "", body, headers }: RequestInit) =>
      new Promise<Response>((answer, fail) => {
        const ifMatch = new Headers(headers).get("If-Match");
        sent.push({ method, path, body: body ? JSON.parse(String(body)) : null, ifMatch, answer, fail });
      }),
  );
});
afterEach(() => {
  currentBook.value = null;
  vi.unstubAllGlobals();
});

const record = (revision: number, data: unknown) => ({
  id: "s1",
  revision,
  createdAt: "",
  updatedAt: "",
  data,
});
const BEFORE = record(3, { name: "as it was" });
const reply = (status: number, body: unknown) => Response.json(body, { status });
const refusal = (status: number, message: string) =>
  reply(status, { error: { code: "x", message, fields: [] } });
/** The next request, once it is sent. */
const next = async (at: number): Promise<Sent> => vi.waitUntil(() => sent[at]);

describe("a record on its way to the server", () => {
  it("once stored, is in the book on the screen", async () => {
    const { outcome } = sendRecord("skirts", null, { name: "new" });
    (await next(0)).answer(reply(201, record(1, { name: "new" })));
    expect(await outcome).toEqual(record(1, { name: "new" }));
    expect(currentBook.value?.skirts).toEqual([record(1, { name: "new" })]);
  });

  it("new and discarded before the answer, is deleted again at the revision that was stored", async () => {
    const { outcome, discard } = sendRecord("skirts", null, { name: "new" });
    discard();
    (await next(0)).answer(reply(201, record(1, { name: "new" })));
    const undo = await next(1);
    expect([undo.method, undo.path, undo.ifMatch]).toEqual(["DELETE", "/api/v1/skirts/s1", '"1"']);
    undo.answer(new Response(null, { status: 204 }));
    expect(await outcome).toBeNull();
    expect(currentBook.value?.skirts).toEqual([]);
    expect(notice.value).toBeNull();
  });

  it("corrected and discarded before the answer, gets back what it said before", async () => {
    const { outcome, discard } = sendRecord("skirts", BEFORE, { name: "corrected" });
    discard();
    (await next(0)).answer(reply(200, record(4, { name: "corrected" })));
    const undo = await next(1);
    expect([undo.method, undo.ifMatch, undo.body]).toEqual(["PUT", '"4"', BEFORE.data]);
    undo.answer(reply(200, record(5, BEFORE.data)));
    expect(await outcome).toBeNull();
    expect(currentBook.value?.skirts).toEqual([record(5, BEFORE.data)]);
  });

  it("discarded and refused, needs nothing more", async () => {
    const { outcome, discard } = sendRecord("skirts", null, {});
    discard();
    (await next(0)).answer(refusal(400, "name: needed"));
    expect(await outcome).toBeNull();
    expect(sent).toHaveLength(1);
    expect(notice.value).toBeNull();
  });

  it("discarded and never answered, is said to be perhaps in the book", async () => {
    const { outcome, discard } = sendRecord("skirts", null, {});
    discard();
    (await next(0)).fail(new DOMException("", "TimeoutError"));
    expect(await outcome).toBeNull();
    expect(notice.value).toBe(
      "The server has not answered for 20 s. What you discarded may be in the book all the same: look for it in the list.",
    );
  });

  it("discarded, stored, and not to be taken back, is said to be in the book", async () => {
    const { outcome, discard } = sendRecord("skirts", null, {});
    discard();
    (await next(0)).answer(reply(201, record(1, {})));
    (await next(1)).answer(refusal(409, "A build uses it."));
    expect(await outcome).toBeNull();
    expect(notice.value).toBe("What you discarded was stored and can't be taken back. A build uses it.");
  });

  it("refused, rejects with the refusal", async () => {
    const { outcome } = sendRecord("skirts", null, {});
    (await next(0)).answer(refusal(400, "name: needed"));
    await expect(outcome).rejects.toMatchObject({ status: 400, message: "name: needed" });
  });
});

describe("what a form says of a save that failed", () => {
  it.each([
    [new ApiError(400, "invalid", "name: needed"), true, "name: needed"],
    [new ApiError(0, "unreachable", "Gone."), true, "Gone. What you typed is kept."],
    [new ApiError(0, "timeout", "Late."), false, "Late. What you typed is kept."],
    [
      new ApiError(0, "timeout", "Late."),
      true,
      "Late. What you typed is kept. It may be in the book all the same: look in the list before you save it again.",
    ],
  ])("of %o, a new record: %s", (error, isNew, words) => {
    expect(saveProblem(error, isNew)).toBe(words);
  });
});
