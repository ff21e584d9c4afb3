import { describe, expect, it, vi } from "vitest";
import { loadDemo } from "#server/demo.ts";
import { BookAnswers } from "#server/routes/bookAnswers.ts";
import { calibrationFound } from "#server/routes/calibration.ts";
import { ownThread } from "#server/threads/ownThread.ts";
import type { Threads } from "#server/threads/threads.ts";
import { workAhead } from "#server/workedAhead.ts";
import { calibrationOf } from "#shared/book/calibration.ts";
import { calibrationResponse } from "#shared/model/api/calibration.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { freshBook } from "./support/api.ts";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date("2026-03-01T08:00:00Z"));
  return book;
}

const at = (id: string) => `/api/v1/builds/${id}/calibration`;

describe("GET /builds/{id}/calibration", () => {
  it("of a build of the demo: answers in the documented shape what the book's own function says, and from what", async () => {
    const { body } = await demoServer().api.get(at("ridge-runner")).expect(200);
    expect(calibrationResponse.parse(body)).toEqual(body);
    const demo = demoBook();
    const build = demo.builds.find(({ id }) => id === "ridge-runner");
    if (!build) throw new Error("the demo has no ridge-runner");
    const own = calibrationOf(demo, build.data);
    expect(body.answer).toEqual(own?.answer);
    expect(JSON.stringify(body.request)).toBe(JSON.stringify(own?.request));
  });

  it("of a build without pulls: null, and no reason", async () => {
    const { body } = await demoServer().api.get(at("prop-scout")).expect(200);
    expect(body).toEqual({ request: null, answer: null, why: null });
  });

  it("after a write to the book: reads the book as it is then", async () => {
    const { api } = demoServer();
    const path = "/api/v1/skirts/";
    const build = (await api.get("/api/v1/builds/ridge-runner")).body.data;
    const before = (await api.get(at("ridge-runner"))).body.request.prior.gap.mean;
    const skirt = (await api.get(path + build.skirt)).body;
    await api
      .put(path + build.skirt)
      .set("If-Match", `"${skirt.revision}"`)
      .send({ ...skirt.data, uncertainty: { ...skirt.data.uncertainty, gap: 9e-5 } })
      .expect(200);
    const { prior } = (await api.get(at("ridge-runner"))).body.request;
    expect(prior.gap.mean).toBe(before);
    expect(prior.gap.sd).toBeGreaterThanOrEqual(9e-5);
  });

  it("of an unknown build: 404", async () => {
    const { body } = await demoServer().api.get(at("no-such-build")).expect(404);
    expect(body.error.message).toContain("no-such-build");
  });
});

describe("answers kept of the book", () => {
  /** An answer counts how often it was worked out; it comes from the book's units. */
  function counting() {
    const { store } = demoServer();
    const answers = new BookAnswers(store);
    let made = 0;
    let looks = 0;
    const work = async (known: string | null) => {
      looks += 1;
      const from = String(store.units().length);
      return { from, text: from === known ? null : new TextEncoder().encode(String(++made)) };
    };
    const ask = async (key: string, how = work) => new TextDecoder().decode(await answers.of(key, how));
    return { store, answers, ask, made: () => made, looks: () => looks };
  }

  it("asked twice, the second time before the first is answered: worked out once", async () => {
    const { ask, made, looks } = counting();
    expect(await Promise.all([ask("a"), ask("a")])).toEqual(["1", "1"]);
    expect(await ask("a")).toBe("1");
    await ask("b");
    expect([made(), looks()]).toEqual([2, 2]);
  });

  it("after a write that it depends on: worked out anew, the stale one never given", async () => {
    const { store, ask } = counting();
    await ask("a");
    store.showIn({ length: "in" });
    expect(await ask("a")).toBe("2");
  });

  it("after a write that it doesn't depend on: looked at, and kept", async () => {
    const { store, ask, made, looks } = counting();
    await ask("a");
    store.showIn({ mass: "oz" });
    expect(await ask("a")).toBe("1");
    expect([made(), looks()]).toEqual([1, 2]);
  });

  it("refreshed after a write: ready before anybody asks, without a second look", async () => {
    const { store, answers, ask, made, looks } = counting();
    await ask("a");
    store.showIn({ length: "in" });
    await answers.refresh(new AbortController().signal);
    expect([made(), looks()]).toEqual([2, 2]);
    expect(await ask("a")).toBe("2");
    expect(looks()).toBe(2);
  });

  it("that has no answer any more when it is refreshed: dropped, and the next who asks is told", async () => {
    const { store, answers, ask } = counting();
    let isGone = false;
    const work = async () => {
      if (isGone) throw new Error("gone");
      return { from: "x", text: new Uint8Array([49]) };
    };
    await ask("a", work);
    isGone = true;
    store.showIn({ length: "in" });
    await answers.refresh(new AbortController().signal);
    await expect(ask("a", work)).rejects.toThrow("gone");
  });

  it("that failed: worked out anew by the next who asks", async () => {
    const { ask } = counting();
    await expect(ask("a", () => Promise.reject(new Error("busy")))).rejects.toThrow("busy");
    expect(await ask("a")).toBe("1");
  });

  it("of more questions than are kept: the longest unasked is worked out anew", async () => {
    const { ask, made } = counting();
    for (let i = 0; i < 64; i += 1) await ask(String(i));
    await ask("0");
    await ask("more");
    expect(made()).toBe(65);
    await ask("0");
    expect(made()).toBe(65);
    await ask("1");
    expect(made()).toBe(66);
  });

  it("of a build, through a thread's own reading of the file: the same bytes, none where they are known", async () => {
    const { api, store } = demoServer();
    const asked = { file: store.file, id: "ridge-runner" };
    const { from, text } = calibrationFound({ ...asked, known: null });
    expect(JSON.parse(new TextDecoder().decode(text ?? undefined))).toEqual(
      (await api.get(at("ridge-runner"))).body,
    );
    expect(calibrationFound({ ...asked, known: from })).toEqual({ from, text: null });
  });
});

describe("worked ahead", () => {
  const quiet = 600;
  const wait = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

  function ahead() {
    const { store, api } = demoServer();
    const runs: string[] = [];
    const own = ownThread();
    const threads: Threads = {
      ...own,
      run: (name, input, options) => {
        runs.push(`${name} ${(input as { id: string }).id}`);
        return own.run(name, input, options);
      },
    };
    const end = workAhead({ store, threads, answers: new BookAnswers(store) });
    return { store, api, runs, end };
  }

  it("at the start: calibrations of the builds, the first one's next tests; after a write all of them are looked at", async () => {
    const { api, runs, end } = ahead();
    await vi.waitFor(() => expect(runs.length).toBeGreaterThanOrEqual(6), { timeout: 60_000 });
    const first = demoBook().builds[0].id;
    expect(runs.filter((run) => run.startsWith("calibration "))).toHaveLength(demoBook().builds.length);
    expect(runs).toContain(`nextTests ${first}`);
    runs.length = 0;
    const stored = (await api.get("/api/v1/tests/demo-03-curve")).body;
    await api.delete("/api/v1/tests/demo-03-curve").set("If-Match", `"${stored.revision}"`).expect(204);
    await vi.waitFor(() => expect(runs.length).toBeGreaterThanOrEqual(6), { timeout: 60_000 });
    end();
  });

  it("ended before the write's turn: does nothing more", async () => {
    const { store, runs, end } = ahead();
    await vi.waitFor(() => expect(runs.length).toBeGreaterThanOrEqual(6), { timeout: 60_000 });
    store.showIn({ length: "in" });
    end();
    runs.length = 0;
    await wait(quiet);
    expect(runs).toEqual([]);
  });
});
