import { afterEach, describe, expect, it, vi } from "vitest";
import { currentBook, keep, loadError, reload } from "#client/state/book.ts";
import { toSI } from "#shared/units/quantity.ts";

/** A book whose only test reads flow in a unit that the table of units does not show. */
const FLOW = { value: 300, unit: "cm^3/s" };
const TEST = { id: "odd", revision: 1, createdAt: "", updatedAt: "", data: { rows: [{ flow: FLOW }] } };

function answer(path: string): object {
  if (path.endsWith("/bench")) return { demo: false, counts: {}, backup: null };
  return { items: path.includes("/tests?") ? [TEST] : [], next: null };
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("the book, read from the server", () => {
  it("can be made into numbers at once, with a reading in a unit beyond the table", async () => {
    vi.stubGlobal("fetch", (path: string) => Promise.resolve(Response.json(answer(path))));
    await reload();
    expect(loadError.value).toBeNull();
    expect(currentBook.value?.tests).toHaveLength(1);
    expect(toSI(FLOW, "flow")).toBeCloseToRelative(3e-4, 1e-12);
  });
});

describe("a test that is struck out", () => {
  it("is not asked for, and leaves the book on the screen when its new state comes; back in use, it is there again", async () => {
    const asked: string[] = [];
    vi.stubGlobal("fetch", (path: string) => {
      asked.push(path);
      return Promise.resolve(Response.json(answer(path)));
    });
    await reload();
    expect(asked.find((path) => path.includes("/tests?"))).toContain("struckOut=false");
    keep("tests", { ...TEST, revision: 2, data: { ...TEST.data, struckOut: "wrong hose" } });
    expect(currentBook.value?.tests).toEqual([]);
    keep("tests", { ...TEST, revision: 3 });
    expect(currentBook.value?.tests).toHaveLength(1);
  });
});

describe("the book, read where another program answers", () => {
  it.each([
    ["a page of HTML", "<!doctype html>", /is no JSON/],
    ["JSON of another shape", "{}", /is no list of records/],
  ])("with %s and status 200, says so instead of loading for ever", async (_case, body, words) => {
    vi.resetModules();
    const { loadError, loadState, reload } = await import("#client/state/book.ts");
    vi.stubGlobal("fetch", () => Promise.resolve(new Response(body, { status: 200 })));
    await reload();
    expect(loadState.value).toBe("error");
    expect(loadError.value).toMatch(words);
  });
});

describe("the book, read again before the last reading came", () => {
  it("shows the later reading, however late the earlier one is answered", async () => {
    vi.resetModules();
    const { isDemo, loadState, reload } = await import("#client/state/book.ts");
    const early: (() => void)[] = [];
    vi.stubGlobal(
      "fetch",
      (path: string) =>
        new Promise<Response>((resolve) => {
          early.push(() => resolve(Response.json({ ...answer(path), demo: true })));
        }),
    );
    const first = reload();
    vi.stubGlobal("fetch", (path: string) => Promise.resolve(Response.json(answer(path))));
    await reload();
    for (const come of early) come();
    await first;
    expect(isDemo.value).toBe(false);
    expect(loadState.value).toBe("ready");
  });
});

describe("whether the book was read at one moment", () => {
  /** @param standing - what a list says of how the book stood, by its path */
  const readWhere = async (standing: (path: string) => string | null) => {
    vi.resetModules();
    const { reload, wasReadAt } = await import("#client/state/book.ts");
    vi.stubGlobal("fetch", (path: string) => {
      const said = path.endsWith("/bench") ? null : standing(path);
      const headers: Record<string, string> = said === null ? {} : { "Book-Written": said };
      return Promise.resolve(Response.json(answer(path), { headers }));
    });
    const reading = reload();
    return { reading, wasReadAt };
  };

  it("asked while it is read, all lists of one state: waits, then yes for that state and no for another", async () => {
    const { wasReadAt } = await readWhere(() => "7");
    expect(await wasReadAt("7")).toBe(true);
    expect(await wasReadAt("8")).toBe(false);
  });

  it.each([
    ["a list of the state before", (path: string) => (path.includes("/motors?") ? "6" : "7")],
    ["tests of the state before", (path: string) => (path.includes("/tests?") ? "6" : "7")],
    ["a list that says no state", (path: string) => (path.includes("/skirts?") ? null : "7")],
  ])("with %s: no", async (_case, standing) => {
    const { reading, wasReadAt } = await readWhere(standing);
    await reading;
    expect(await wasReadAt("7")).toBe(false);
    expect(await wasReadAt("6")).toBe(false);
  });

  it("that never was read: no", async () => {
    vi.resetModules();
    const { wasReadAt } = await import("#client/state/book.ts");
    expect(await wasReadAt("7")).toBe(false);
  });
});
