import { afterEach, describe, expect, it, vi } from "vitest";
import { keepDraft } from "#client/state/drafts.ts";
import { keptOver } from "#client/views/parts/editing.ts";

const state = { values: { name: "half typed", kv: "2300 rpm/V" }, rows: { sizes: 1 } };

function store(): void {
  const kept = new Map<string, string>();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
  });
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("what was typed into a part's form", () => {
  it("over the same revision: comes back as it was", () => {
    store();
    keepDraft("motors/m1", state, 3);
    expect(keptOver("motors/m1", 3)?.content).toEqual(state);
  });

  it("over a revision that was replaced meanwhile: does not come back over the newer one", () => {
    store();
    keepDraft("motors/m1", state, 3);
    expect(keptOver("motors/m1", 4)).toBeNull();
  });

  it.each([
    ["numbers where texts belong", { ...state, values: { kv: 2300 } }],
    ["no rows", { values: {} }],
    ["nothing", null],
  ])("with %s: does not come back", (_what, content) => {
    store();
    keepDraft("motors/new", content, null);
    expect(keptOver("motors/new", null)).toBeNull();
  });
});
