import { afterEach, describe, expect, it, vi } from "vitest";
import {
  type DraftKind,
  forgetDraft,
  forgetOldDrafts,
  keepBesideOthers,
  keepDraft,
  keptDraft,
} from "#client/state/drafts.ts";
import { notice } from "#client/state/notice.ts";
import { showUnitsOf, UNIT_SETS, unitOf } from "#shared/units/showing.ts";

const DAY = 24 * 3600 * 1000;
const NOW = Date.UTC(2026, 2, 14);
const TEXT: DraftKind<string> = {
  isContent: (content): content is string => typeof content === "string",
  settled: (text) => `${text} ${unitOf("length")}`,
};

/** A browser's store; a full one refuses to write, a blocked one everything. */
function store(trouble: "full" | "blocked" | null = null): Map<string, string> {
  const kept = new Map<string, string>();
  const refuse = () => {
    throw new DOMException("refused", trouble === "full" ? "QuotaExceededError" : "SecurityError");
  };
  vi.stubGlobal("localStorage", {
    getItem: trouble === "blocked" ? refuse : (key: string) => kept.get(key) ?? null,
    setItem: trouble ? refuse : (key: string, text: string) => kept.set(key, text),
    removeItem: trouble === "blocked" ? refuse : (key: string) => kept.delete(key),
    key: (i: number) => [...kept.keys()][i] ?? null,
    get length() {
      return trouble === "blocked" ? refuse() : kept.size;
    },
  });
  return kept;
}

afterEach(() => {
  showUnitsOf(() => UNIT_SETS.metric);
  vi.unstubAllGlobals();
});

describe("what was typed and not saved", () => {
  it("comes back days later with its revision and moment, until it is saved or discarded", () => {
    store();
    keepDraft("motors/m1", "half typed", 3, NOW);
    expect(keptDraft("motors/m1", TEXT, NOW + 6 * DAY)).toEqual({
      content: "half typed",
      revision: 3,
      at: NOW,
    });
    expect(keptDraft("motors/new", TEXT, NOW)).toBeNull();
    forgetDraft("motors/m1");
    expect(keptDraft("motors/m1", TEXT, NOW)).toBeNull();
  });

  it("two weeks old: does not come back, and is dropped with the others of its age alone", () => {
    const kept = store();
    keepDraft("old", "a", null, NOW - 14 * DAY);
    keepDraft("young", "b", null, NOW - DAY);
    kept.set("gripcurve-theme", "dark");
    expect(keptDraft("old", TEXT, NOW)).toBeNull();
    forgetOldDrafts(NOW);
    expect([...kept.keys()]).toEqual([expect.stringMatching(/young$/), "gripcurve-theme"]);
  });

  it.each([
    ["no JSON", "{half"],
    ["of another shape", '{"draft":1}'],
    ["without a moment", '{"content":"a","revision":null,"at":"never"}'],
    ["nothing that the form can show", `{"content":7,"revision":null,"at":${NOW}}`],
  ])("damaged, %s: does not come back, and nothing breaks", (_what, text) => {
    const kept = store();
    keepDraft("motors/new", "a", null, NOW);
    const [key] = kept.keys();
    // as another page finds it
    forgetDraft("motors/new");
    kept.set(key, text);
    expect(keptDraft("motors/new", TEXT, NOW)).toBeNull();
  });

  it.each(["full", "blocked"] as const)(
    "in a store that is %s: is not kept, and nothing breaks",
    (trouble) => {
      store(trouble);
      keepDraft("motors/new", "a", null, NOW);
      forgetOldDrafts(NOW);
      forgetDraft("motors/new");
      expect(keptDraft("motors/new", TEXT, NOW)).toBeNull();
    },
  );

  it("in a store that is full: the page says so once, and again when it was kept in between", () => {
    store();
    keepDraft("motors/new", "a", null, NOW);
    notice.value = null;
    store("full");
    keepDraft("motors/new", "ab", null, NOW);
    expect(notice.value).toMatch(/doesn't keep what you type/);
    notice.value = null;
    keepDraft("motors/new", "abc", null, NOW);
    expect(notice.value).toBeNull();
    store();
    keepDraft("motors/new", "abc", null, NOW);
    store("full");
    keepDraft("motors/new", "abcd", null, NOW);
    expect(notice.value).toMatch(/Save before you reload/);
  });

  it("saved in another tab that has the same form open: what was typed here is kept on, until it is saved here", () => {
    const kept = store();
    let told: (event: Partial<StorageEvent>) => void = () => {};
    vi.stubGlobal("addEventListener", (_type: string, listener: typeof told) => {
      told = listener;
    });
    keepBesideOthers();
    keepDraft("motors/new", "typed here", null, NOW);
    const [key] = kept.keys();
    kept.clear();
    told({ key, newValue: null });
    expect(keptDraft("motors/new", TEXT, NOW)?.content).toBe("typed here");
    forgetDraft("motors/new");
    told({ key, newValue: null });
    told({ key: null, newValue: null });
    expect(kept.size).toBe(0);
  });
});

describe("a bare number that was typed and not saved", () => {
  it("means the unit that it was typed under, whatever is shown since, and is as typed where that is shown again", () => {
    store();
    keepDraft("skirts/new", "12", null, NOW);
    expect(keptDraft("skirts/new", TEXT, NOW)?.content).toBe("12");
    showUnitsOf(() => UNIT_SETS.inch);
    expect(keptDraft("skirts/new", TEXT, NOW)?.content).toBe("12 mm");
    keepDraft("gears/new", "3", null, NOW);
    expect(keptDraft("gears/new", TEXT, NOW)?.content).toBe("3");
    showUnitsOf(() => UNIT_SETS.metric);
    expect(keptDraft("skirts/new", TEXT, NOW)?.content).toBe("12");
    expect(keptDraft("gears/new", TEXT, NOW)?.content).toBe("3 in");
  });

  it.each(["full", "blocked"] as const)("in a %s store, is kept by the page itself", (trouble) => {
    store(trouble);
    keepDraft("packs/new", "12", null, NOW);
    showUnitsOf(() => UNIT_SETS.inch);
    expect(keptDraft("packs/new", TEXT, NOW)?.content).toBe("12 mm");
    forgetDraft("packs/new");
    expect(keptDraft("packs/new", TEXT, NOW)).toBeNull();
  });
});
