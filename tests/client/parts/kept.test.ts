import { afterEach, describe, expect, it, vi } from "vitest";
import { forgetState, keepState, keptState } from "#client/views/parts/kept.ts";

const state = { values: { name: "half typed", kv: { value: 2300, unit: "rpm/V" } }, rows: { sizes: 1 } };

function store(full = false): void {
  const kept = new Map<string, string>();
  vi.stubGlobal("sessionStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (full) throw new DOMException("full", "QuotaExceededError");
      kept.set(key, text);
    },
    removeItem: (key: string) => kept.delete(key),
  });
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("what was typed into a part's form", () => {
  it("over the same revision: comes back as it was, until it is forgotten", () => {
    store();
    keepState("motors/m1", state, 3);
    expect(keptState("motors/m1", 3)).toEqual(state);
    expect(keptState("motors/new", null)).toBeNull();
    forgetState("motors/m1");
    expect(keptState("motors/m1", 3)).toBeNull();
  });

  it("over a revision that was replaced meanwhile: does not come back over the newer one", () => {
    store();
    keepState("motors/m1", state, 3);
    expect(keptState("motors/m1", 4)).toBeNull();
  });

  it("where the tab's store is full: is not kept, and nothing breaks", () => {
    store(true);
    keepState("motors/new", state, null);
    expect(keptState("motors/new", null)).toBeNull();
  });
});
