import { afterEach, describe, expect, it, vi } from "vitest";
import { calibrateAhead } from "#client/state/calibratedAhead.ts";
import { calibrationOf, calibrationToDo } from "#shared/book/calibration.ts";
import { calibrate } from "#shared/fit/calibration.ts";
import { demoBook } from "#tests/support/demoBook.ts";

vi.mock("#client/app/router.ts", async (original) => {
  const { signal } = await import("@preact/signals");
  const router = await original<typeof import("#client/app/router.ts")>();
  return { ...router, route: signal({ view: "match", id: "ridge-runner", query: new URLSearchParams() }) };
});

const BUILD = "ridge-runner";

/** The demo with one pull test less each, so that no calibration of it is known yet. */
function unknownBook(without: string) {
  const demo = demoBook();
  return { ...demo, tests: demo.tests.filter(({ id }) => id !== without) };
}

const buildOf = (book: ReturnType<typeof demoBook>) => {
  const build = book.builds.find(({ id }) => id === BUILD)?.data;
  if (!build) throw new Error(`The demo has no ${BUILD}.`);
  return build;
};

const leakTests = () => {
  const { skirt, surface } = buildOf(demoBook());
  return demoBook().tests.flatMap(({ id, data }) =>
    data.kind === "leak" && data.skirt === skirt && data.surface === surface ? [id] : [],
  );
};

function answering(answer: () => Response) {
  const asked: string[] = [];
  // However busy the machine, the answer comes in time.
  vi.useFakeTimers({ toFake: ["setTimeout"] });
  vi.stubGlobal("sessionStorage", { getItem: () => null });
  vi.stubGlobal("fetch", (path: string) => {
    asked.push(path);
    return Promise.resolve(answer());
  });
  return asked;
}

const waits = () => new AbortController().signal;

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe("a calibration, asked of the server ahead of the screen", () => {
  it("answered for the same numbers: known, the very answer that the page would work out, and asked for once", async () => {
    const book = unknownBook(leakTests()[0]);
    const request = calibrationToDo(book, buildOf(book));
    if (!request) throw new Error("known already");
    const answer = calibrate(request);
    const asked = answering(() => Response.json({ request, answer, why: null }));
    await calibrateAhead(book, waits());
    expect(asked).toEqual([`/api/v1/builds/${BUILD}/calibration`]);
    expect(calibrationToDo(book, buildOf(book))).toBeNull();
    expect(calibrationOf(book, buildOf(book))?.answer).toEqual(answer);
    await calibrateAhead({ ...book }, waits());
    expect(asked).toHaveLength(1);
  });

  it("answered for numbers that were rounded in another last digit: known all the same", async () => {
    const book = { ...unknownBook("none"), surfaces: thicker(3) };
    const request = calibrationToDo(book, buildOf(book));
    if (!request) throw new Error("known already");
    const answer = calibrate(request);
    const rounded = JSON.stringify(request, (_, value) =>
      typeof value === "number" && !Number.isInteger(value) ? value * (1 + 3e-16) : value,
    );
    expect(rounded).not.toBe(JSON.stringify(request));
    answering(() => Response.json({ request: JSON.parse(rounded), answer, why: null }));
    await calibrateAhead(book, waits());
    expect(calibrationToDo(book, buildOf(book))).toBeNull();
  });

  it("answered for a book that differs: left to the page", async () => {
    const [theirs, ours] = [demoBook(), { ...unknownBook("none"), surfaces: thicker() }];
    const request = calibrationOf(theirs, buildOf(theirs))?.request;
    const answer = calibrationOf(theirs, buildOf(theirs))?.answer;
    answering(() => Response.json({ request, answer, why: null }));
    await calibrateAhead(ours, waits());
    expect(calibrationToDo(ours, buildOf(ours))).not.toBeNull();
  });

  it("refused, or by a server that gives no answer: left to the page, nothing breaks", async () => {
    const book = { ...unknownBook("none"), surfaces: thicker(2) };
    answering(() => new Response("busy", { status: 429 }));
    await calibrateAhead(book, waits());
    vi.stubGlobal("fetch", () => Promise.reject(new TypeError("gone")));
    await calibrateAhead(book, waits());
    expect(calibrationToDo(book, buildOf(book))).not.toBeNull();
  });
});

/** Surfaces whose friction nobody has asked about yet. */
function thicker(times = 1) {
  return demoBook().surfaces.map((surface) => ({
    ...surface,
    data: { ...surface.data, roughness: surface.data.roughness + times * 1e-5 },
  }));
}
