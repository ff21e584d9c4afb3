import { describe, expect, it } from "vitest";
import { type Outcome, solve } from "../../../client/state/outcome.ts";
import { type Rose, roseOf } from "../../../client/views/attitudes/rose.ts";
import { roseTable } from "../../../client/views/attitudes/table.ts";
import {
  beyondRim,
  degrees,
  grams,
  madeText,
  needSentence,
  roseSentence,
} from "../../../client/views/attitudes/words.ts";
import { predict } from "../../../shared/physics/predict.ts";
import { isPropeller } from "../../../shared/physics/predictAny.ts";
import { demoBench } from "../../support/demoBench.ts";

const bench = demoBench();
const build = bench.builds[0].data;

function rose(change: (outcome: Outcome) => Outcome = (outcome) => outcome): Rose {
  const found = roseOf(change(solve(bench, build)));
  if (!found) throw new Error("The demo's first build has no numbers.");
  return found;
}

const heavy = (mass: number) => () => solve(bench, { ...build, vehicle: { ...build.vehicle, mass } });

describe("roseOf", () => {
  it("has its greatest need, of all whole degrees, next to the worst angle and no greater", () => {
    const { stands, worst } = rose();
    for (const state of ["parked", "driving"] as const) {
      const most = stands.reduce((a, b) => (b[state].pull > a[state].pull ? b : a));
      expect(Math.abs(most.angle - worst[state].angle)).toBeLessThanOrEqual(1);
      expect(most[state].pull).toBeLessThanOrEqual(worst[state][state].pull * (1 + 1e-12));
    }
  });

  it("spreads the pull made, with the gap's uncertainty alone, between the pulls of the two gaps", () => {
    const { spread, input, made } = rose();
    if (!spread || isPropeller(input)) throw new Error("The demo states the gap's uncertainty.");
    const at = (gap: number) => predict({ ...input, skirt: { ...input.skirt, gap } }).suction;
    expect(spread.less).toBeCloseToRelative(at(input.skirt.gap + spread.doubt), 1e-9);
    expect(spread.more).toBeCloseToRelative(at(input.skirt.gap - spread.doubt), 1e-9);
    expect(spread.less).toBeLessThan(made);
    expect(spread.more).toBeGreaterThan(made);
  });

  it("states no spread, without an uncertainty of the gap, and none in words", () => {
    const sure = rose((outcome) => ({
      ...outcome,
      resolved: outcome.resolved && {
        ...outcome.resolved,
        gap: { ...outcome.resolved.gap, uncertainty: null },
      },
    }));
    expect(sure.spread).toBeNull();
    expect(madeText(sure)).toBe(`It makes ${grams(sure.made)}.`);
  });

  it("answers for floor, wall, ceiling, the build's own and the worst, in that order", () => {
    const kinds = rose().named.map((each) => each.kind);
    expect(kinds.slice(0, 3)).toEqual(["standard", "standard", "standard"]);
    expect(kinds.filter((kind) => kind === "own")).toHaveLength(build.attitudes.length);
    expect(kinds.at(-1)).toBe("worst");
  });

  it("is nothing, with a motor that the book does not have", () => {
    expect(roseOf(solve(bench, { ...build, motor: "no-such-motor" }))).toBeNull();
  });
});

describe("words", () => {
  it("says where it needs most and of how much, with a build that holds", () => {
    const found = rose();
    const { angle, parked } = found.worst.parked;
    expect(needSentence(found)).toBe(
      `It needs most at ${Math.round(angle)}°, an overhang: ${grams(parked.pull)} of the ${grams(found.made)} it makes.`,
    );
  });

  it("says that it needs more than it makes, with a mass too large, and names no rim that it hides", () => {
    const found = rose(heavy(3));
    expect(needSentence(found)).toMatch(/more than the .* it makes\.$/);
    expect(beyondRim(found)).toMatch(/^Between \d+° and \d+° driving needs more than the rim shows/);
  });

  it("says that it cannot drive up, with a pull between parking's need and driving's, and what that takes", () => {
    const found = rose();
    const made = (found.worst.parked.parked.pull + found.worst.driving.driving.pull) / 2;
    expect(needSentence({ ...found, made })).toMatch(
      /It cannot drive up the overhang at \d+°: that takes \d+\sg\.$/,
    );
  });

  it("says that no pull holds it, without any friction, and shows no figure for it", () => {
    const found = rose(() => solve(bench, { ...build, overrides: { wheelFriction: 0 } }));
    expect(needSentence(found)).toMatch(/^No pull holds it at/);
    expect(roseSentence(found)).toContain("no pull suffices");
    expect(roseSentence(found)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it.each([
    [128, "128°"],
    [153.5, "153.5°"],
    [0, "0°"],
    [179.96, "180°"],
  ])("writes %s, as degrees, as %s", (angle, text) => {
    expect(degrees(angle)).toBe(text);
  });
});

describe("roseTable", () => {
  it("has a row for each named attitude and each fifth degree, with as many cells as columns, all finite", () => {
    const found = rose();
    const { columns, rows } = roseTable(found);
    expect(rows).toHaveLength(found.named.length + 37);
    for (const row of rows) {
      expect(row).toHaveLength(columns.length);
      for (const cell of row) if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
    }
  });
});
