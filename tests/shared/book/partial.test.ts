import { describe, expect, it } from "vitest";
import type { Bench } from "../../../shared/book/bench.ts";
import { resolveBuild, solvable } from "../../../shared/book/resolve.ts";
import { type PartialAnswer, partialAnswer } from "../../../shared/physics/partial/answer.ts";
import { atCellVoltage, predictAny } from "../../../shared/physics/predictAny.ts";
import { demoBench } from "../../support/demoBench.ts";
import { expectAllFinite } from "../../support/finite.ts";
import { demoWithout, withoutCell, withoutFriction, withoutPower } from "../../support/partialBench.ts";

const ANGLES = [0, 90, 153, 180];
const [PANE, SCOUT] = ["pane-crawler", "prop-scout"];

function resolvedIn(bench: Bench, id = PANE) {
  const build = bench.builds.find((each) => each.id === id);
  if (!build) throw new Error(`no build ${id}`);
  return resolveBuild(bench, build.data);
}

function knownOf(bench: Bench, id = PANE): PartialAnswer {
  const { partial } = resolvedIn(bench, id);
  if (!partial) throw new Error("nothing can be said");
  return partialAnswer(partial.input, { angles: ANGLES, target: 1.5 });
}

const statedFriction = (bench: Bench, wheelFriction: number): Bench => ({
  ...bench,
  surfaces: bench.surfaces.map((surface) => ({ ...surface, data: { ...surface.data, wheelFriction } })),
});

function wholeIn(bench: Bench, id = PANE) {
  const input = solvable(resolvedIn(bench, id));
  if (!input) throw new Error("something is missing");
  return input;
}

describe.each([PANE, SCOUT])("what can be said of %s", (id) => {
  it("with nothing missing: stands in its full numbers alone", () => {
    expect(resolvedIn(demoBench(), id).partial).toBeNull();
  });

  it("without friction: point and pull as with any friction, no verdict, the tilt board named", () => {
    const bench = demoWithout(withoutFriction);
    const resolved = resolvedIn(bench, id);
    expect([solvable(resolved), resolved.partial?.unknown]).toEqual([null, ["friction"]]);
    expect(resolved.missing.map(({ test }) => test)).toEqual(["friction"]);
    const [at] = knownOf(bench, id).moments;
    const whole = predictAny(wholeIn(statedFriction(bench, 0.7), id), []);
    expect(at.point).toEqual(whole.point);
    expect(at.suction).toBe(whole.suction);
    expect(at.holds.every(({ verdict }) => verdict === null)).toBe(true);
  });

  it("without friction, and then with the least that would do: that margin is reached, not passed", () => {
    const bench = demoWithout(withoutFriction);
    const { holds } = knownOf(bench, id).moments[0];
    const wall = holds.find(({ angle }) => angle === 90);
    const least = wall?.needs?.target.parked ?? 0;
    const told = predictAny(wholeIn(statedFriction(bench, least), id), [90]);
    expect(told.attitudes[0].margins.slide).toBeCloseToRelative(1.5, 1e-9);
  });

  it("without power: pull at the speeds of its tests, verdicts with it, the current named", () => {
    const bench = demoWithout(withoutPower);
    const resolved = resolvedIn(bench, id);
    expect([solvable(resolved), resolved.partial?.unknown]).toEqual([null, ["speed"]]);
    expect(resolved.missing[0].message).toMatch(/log (the motor's|its) current|name the motor/);
    const { moments } = knownOf(bench, id);
    expect(moments.length).toBeGreaterThan(1);
    const speeds = moments.map(({ rpm }) => rpm);
    expect(speeds).toEqual([...speeds].sort((a, b) => a - b));
    expect(moments.every(({ point }) => point === null)).toBe(true);
    expect(moments[0].holds.every(({ verdict }) => verdict !== null)).toBe(true);
  });

  it("without the cells' curve: as the full numbers say where the loaded cell reaches its minimum", () => {
    // pull tests are read by the pack's voltage, and calibrate the gap where it is known
    const pullless = demoWithout((whole) => ({
      ...whole,
      tests: whole.tests.filter(({ data }) => data.kind !== "pull"),
    }));
    const bench = withoutCell(pullless);
    const resolved = resolvedIn(bench, id);
    expect([solvable(resolved), resolved.partial?.unknown]).toEqual([null, ["charge"]]);
    expect(resolved.missing.map(({ test }) => test)).toEqual(["discharge"]);
    const [at] = knownOf(bench, id).moments;
    const cutOff = resolvedIn(pullless, id).cellVoltage?.cutOff ?? 0;
    const { suction } = predictAny(atCellVoltage(wholeIn(pullless, id), cutOff), []);
    expect(at.suction).toBeCloseToRelative(suction, 1e-5);
  });

  it.each([
    ["friction and charge", [withoutFriction, withoutCell], ["charge", "friction"]],
    ["friction and speed", [withoutFriction, withoutPower], ["speed", "friction"]],
    ["all three", [withoutFriction, withoutPower, withoutCell], ["speed", "charge", "friction"]],
  ])("without %s: says what is left, in finite figures", (_name, changes, unknown) => {
    const bench = demoWithout(...changes);
    const resolved = resolvedIn(bench, id);
    expect(resolved.partial?.unknown).toEqual(unknown);
    expect(resolved.missing).toHaveLength(unknown.length);
    const answer = knownOf(bench, id);
    expect(answer.moments.length).toBeGreaterThan(0);
    expectAllFinite(answer);
  });
});

describe("what can't be said at all", () => {
  it("with neither tests nor geometry of the rotor: nothing is claimed, the curve test is named", () => {
    const bench = demoBench();
    const rotors = bench.rotors.map((rotor) => ({ ...rotor, data: { ...rotor.data, geometry: undefined } }));
    const bare = { ...bench, rotors, tests: bench.tests.filter(({ data }) => data.kind !== "curve") };
    const { partial, missing } = resolvedIn(bare);
    expect(partial).toBeNull();
    expect(missing.map(({ test }) => test)).toEqual(["curve"]);
  });

  it("with its surface not in the book: nothing, for its roughness is half the leak", () => {
    const { partial } = resolvedIn({ ...demoBench(), surfaces: [] });
    expect(partial).toBeNull();
  });

  it("with motor or pack not in the book: the rotor at the speeds of its tests", () => {
    for (const gone of ["motors", "packs"] as const) {
      const bench = { ...demoBench(), [gone]: [] };
      expect(resolvedIn(bench).partial?.unknown).toContain("speed");
      expectAllFinite(knownOf(bench));
    }
  });
});
