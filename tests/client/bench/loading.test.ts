import { describe, expect, it } from "vitest";
import { loadAfter, loadingOf, type Outcome, withLoad } from "#client/views/bench/forms/pad/loading.ts";
import { type Draft, withNewRow, withoutRow } from "#client/views/bench/record/draft.ts";
import { KINDS } from "#client/views/bench/record/kinds.ts";
import { carriedOf, readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { isGood, type NumberSpec } from "#shared/units/readNumber.ts";
import { PULL } from "./examples.ts";

const GRAMS: NumberSpec = { dimension: "load", unit: "g", limits: { min: 0 } };
const CARRIED = carriedOf(KINDS.pull);

/** A new pull test, nothing typed. */
const EMPTY: Draft = (() => {
  const draft = writeDraft(PULL);
  const bare = draft.rows.reduce((rest, { key }) => withoutRow(rest, key), draft);
  return withNewRow(bare, CARRIED);
})();

function tapped(draft: Draft, ...taps: readonly (readonly [step: string, outcome: Outcome])[]): Draft {
  return taps.reduce((now, [step, outcome]) => {
    const loading = loadingOf(now, GRAMS, CARRIED);
    const load = loadAfter(loading, GRAMS, step);
    if (!isGood(load)) throw new Error(load.message);
    return withLoad(now, loading, load, outcome, CARRIED);
  }, draft);
}

const brackets = (draft: Draft) => draft.rows.map(({ cells }) => [cells.held, cells.letGo ?? ""]);

describe("a pull by taps", () => {
  it("adds every load to what held, and brackets the one that let go", () => {
    const draft = tapped(EMPTY, ["100", "held"], ["50", "held"], ["20", "letGo"]);
    expect(brackets(draft)).toEqual([["150 g", "170 g"]]);
    expect(readDraft(draft).errors.size).toBe(0);
  });

  it("that let go at the first load: held nothing", () => {
    expect(brackets(tapped(EMPTY, ["50", "letGo"]))).toEqual([["0 g", "50 g"]]);
  });

  it("after one let go: the next load begins another from nothing", () => {
    const draft = tapped(EMPTY, ["100", "held"], ["20", "letGo"], ["90", "held"]);
    expect(brackets(draft)).toEqual([
      ["100 g", "120 g"],
      ["90 g", ""],
    ]);
    expect(loadingOf(draft, GRAMS, CARRIED)).toMatchObject({ number: 2, held: { value: 90, unit: "g" } });
  });

  it("in tenths and other units: sums in the first one's unit, without the digits that binary leaves", () => {
    // 0.1 + 0.2 is 0.30000000000000004 in binary; 1 N is 101.971621… g at 9.80665 m/s²
    expect(brackets(tapped(EMPTY, ["0.1", "held"], ["0.2", "held"]))).toEqual([["0.3 g", ""]]);
    expect(brackets(tapped(EMPTY, ["100", "held"], ["1 N", "held"]))[0][0]).toMatch(/^201\.971621\d* g$/);
  });

  it.each(["0", "-5", "rubbish"])("with %s as the load: says what is wrong", (step) => {
    const load = loadAfter(loadingOf(EMPTY, GRAMS, CARRIED), GRAMS, step);
    expect(load).toHaveProperty("message");
  });

  it("beside a row that is set aside: begins another", () => {
    const draft = tapped(EMPTY, ["100", "held"]);
    const aside = { ...draft, rows: draft.rows.map((row) => ({ ...row, aside: "slipped" })) };
    expect(loadingOf(aside, GRAMS, CARRIED)).toEqual({ number: 2, row: null, held: null });
  });
});
