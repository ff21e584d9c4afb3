import { describe, expect, it } from "vitest";
import { loadDemo } from "#server/demo.ts";
import { BookAnswers } from "#server/routes/bookAnswers.ts";
import { calibrationText } from "#server/routes/calibration.ts";
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

describe("answers kept for a state of the book", () => {
  function counting() {
    const { store } = demoServer();
    const answers = new BookAnswers<number>(store);
    let made = 0;
    const work = async () => ++made;
    return { store, answers, work, made: () => made };
  }

  it("asked twice, the second time before the first is answered: worked out once", async () => {
    const { answers, work, made } = counting();
    expect(await Promise.all([answers.of("a", work), answers.of("a", work)])).toEqual([1, 1]);
    expect(await answers.of("a", work)).toBe(1);
    await answers.of("b", work);
    expect(made()).toBe(2);
  });

  it("after any write: worked out anew", async () => {
    const { store, answers, work } = counting();
    await answers.of("a", work);
    store.showIn({ length: "in" });
    expect(await answers.of("a", work)).toBe(2);
  });

  it("that failed: worked out anew by the next who asks", async () => {
    const { answers, work } = counting();
    await expect(answers.of("a", () => Promise.reject(new Error("busy")))).rejects.toThrow("busy");
    expect(await answers.of("a", work)).toBe(1);
  });

  it("of more questions than are kept: the longest unasked is worked out anew", async () => {
    const { answers, work, made } = counting();
    for (let i = 0; i < 64; i += 1) await answers.of(String(i), work);
    await answers.of("0", work);
    await answers.of("more", work);
    expect(made()).toBe(65);
    await answers.of("0", work);
    expect(made()).toBe(65);
    await answers.of("1", work);
    expect(made()).toBe(66);
  });

  it("of a build, through a thread's own reading of the file: the same bytes", async () => {
    const { api, store } = demoServer();
    const bytes = calibrationText({ file: store.file, id: "ridge-runner" });
    expect(JSON.parse(new TextDecoder().decode(bytes))).toEqual((await api.get(at("ridge-runner"))).body);
  });
});
