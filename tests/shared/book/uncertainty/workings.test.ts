import { describe, expect, it } from "vitest";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { withMass } from "#shared/book/mass/withMass.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { shareTitle, uncertaintyParts } from "#shared/book/uncertainty/parts.ts";
import { sampledBoard, sampledMargin } from "#shared/book/uncertainty/workings.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { originBehind } from "#shared/physics/working.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const stored = book.builds.find(({ id }) => id === "pane-crawler");
if (!stored) throw new Error("The demo has no pane-crawler.");
const build = withMass(book, stored.data);
const resolved = resolveBuild(book, build);
const { input } = resolved;
if (!input) throw new Error("It has no numbers.");
const { sources, ...stated } = buildUncertainty(book, build, resolved);
const asked = { ...stated, samples: 256, angles: [90] };
const found = uncertaintyOf(input, asked);
const [wall] = found.attitudes;
const board = sampledBoard({ input, resolved, asked, sources, shares: found.shares }, [
  sampledMargin(90, "parked", wall.parked),
  { what: "the pull", symbol: "F", unit: "N", at: found.suction },
]);
const titled = (title: string) => board.workings.find((each) => each.title === title);

describe("workings of what is sampled", () => {
  it("of a band: its ends are the quantiles that are shown", () => {
    const margin = titled("5 to 95 % of the margin at 90°, parked");
    expect([margin?.result.value, margin?.upTo]).toEqual([wall.parked.p5, wall.parked.p95]);
    const pull = titled("5 to 95 % of the pull");
    expect([pull?.result.value, pull?.upTo]).toEqual([found.suction.p5, found.suction.p95]);
  });

  it("of a chance: the samples that hold over all of them", () => {
    const chance = titled("chance of holding: the margin at 90°, parked");
    const of = (symbol: string) => chance?.values.find((each) => each.symbol === symbol)?.value ?? Number.NaN;
    expect(chance?.result.value).toBe(wall.parked.holds);
    expect(of("k") / of("n")).toBeCloseToRelative(wall.parked.holds, 1e-12);
    expect(of("n")).toBe(256);
  });

  it("of every contribution, however small: its share; a band names the greatest alone", () => {
    const parts = uncertaintyParts(found.shares, sources);
    expect(parts.length).toBeGreaterThan(6);
    for (const { what, share } of parts) expect(titled(shareTitle(what))?.result.value, what).toBe(share);
    const named = titled("5 to 95 % of the pull")?.values.filter(({ symbol }) => symbol.startsWith("S"));
    expect(named?.map(({ value }) => value)).toEqual(parts.slice(0, 6).map(({ share }) => share));
  });

  it("of the contributions: the greatest first, each down to a standard uncertainty and its tests", () => {
    const shares = board.workings.filter(({ title }) => title.startsWith("share of the uncertainty"));
    const values = shares.map(({ result }) => result.value);
    expect(values.length).toBeGreaterThan(2);
    expect(values).toEqual([...values].sort((a, b) => b - a));
    expect(values.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(1.2);
    const behind = shares.flatMap((share) =>
      share.values.flatMap((value) => originBehind(value, board.origins)?.tests ?? []),
    );
    expect(behind.length).toBeGreaterThan(0);
  });
});
