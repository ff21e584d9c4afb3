import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { cellVoltages } from "#shared/book/cellVoltages.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { type PartialAnswer, partialAnswer } from "#shared/physics/partial/partialAnswer.ts";
import { atCell, predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { demoWithout, withoutCell, withoutFriction, withoutPower } from "#tests/support/partialBook.ts";

const ANGLES = [0, 90, 153, 180];
const [PANE, SCOUT] = ["pane-crawler", "prop-scout"];

function resolvedIn(book: Book, id = PANE) {
  const build = book.builds.find((each) => each.id === id);
  if (!build) throw new Error(`no build ${id}`);
  return resolveBuild(book, build.data);
}

function knownOf(book: Book, id = PANE): PartialAnswer {
  const { partial } = resolvedIn(book, id);
  if (!partial) throw new Error("nothing can be said");
  return partialAnswer(partial.input, { angles: ANGLES, target: 1.5 });
}

const statedFriction = (book: Book, wheelFriction: number): Book => ({
  ...book,
  surfaces: book.surfaces.map((surface) => ({ ...surface, data: { ...surface.data, wheelFriction } })),
});

function wholeIn(book: Book, id = PANE) {
  const input = solvable(resolvedIn(book, id));
  if (!input) throw new Error("something is missing");
  return input;
}

describe.each([PANE, SCOUT])("what can be said of %s", (id) => {
  it("with nothing missing: stands in its full numbers alone", () => {
    expect(resolvedIn(demoBook(), id).partial).toBeNull();
  });

  it("without friction: point and pull as with any friction, no verdict, the tilt board named", () => {
    const book = demoWithout(withoutFriction);
    const resolved = resolvedIn(book, id);
    expect([solvable(resolved), resolved.partial?.unknown]).toEqual([null, ["friction"]]);
    expect(resolved.missing.map(({ test }) => test)).toEqual(["friction"]);
    const [at] = knownOf(book, id).moments;
    const whole = predictAny(wholeIn(statedFriction(book, 0.7), id), []);
    expect(at.point).toEqual(whole.point);
    expect(at.suction).toBe(whole.suction);
    expect(at.holds.every(({ verdict }) => verdict === null)).toBe(true);
  });

  it("without friction, and then with the least that would do: that margin is reached, not passed", () => {
    const book = demoWithout(withoutFriction);
    const { holds } = knownOf(book, id).moments[0];
    const wall = holds.find(({ angle }) => angle === 90);
    const least = wall?.needs?.target.parked ?? 0;
    const told = predictAny(wholeIn(statedFriction(book, least), id), [90]);
    expect(told.attitudes[0].margins.slide).toBeCloseToRelative(1.5, 1e-9);
  });

  it("without power: pull at the speeds of its tests, verdicts with it, the current named", () => {
    const book = demoWithout(withoutPower);
    const resolved = resolvedIn(book, id);
    expect([solvable(resolved), resolved.partial?.unknown]).toEqual([null, ["speed"]]);
    expect(resolved.missing[0].message).toMatch(/log (the motor's|its) current|name the motor/);
    const { moments } = knownOf(book, id);
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
    const book = withoutCell(pullless);
    const resolved = resolvedIn(book, id);
    expect([solvable(resolved), resolved.partial?.unknown]).toEqual([null, ["charge"]]);
    expect(resolved.missing.map(({ test }) => test)).toEqual(["discharge"]);
    const [at] = knownOf(book, id).moments;
    const cutOff = cellVoltages({ charge: 1 }, resolvedIn(pullless, id))?.cutOff ?? 0;
    const { suction } = predictAny(
      atCell(wholeIn(pullless, id), {
        voltage: cutOff,
        resistance: wholeIn(pullless, id).pack.cellResistance,
      }),
      [],
    );
    expect(at.suction).toBeCloseToRelative(suction, 1e-5);
  });

  it.each([
    ["friction and charge", [withoutFriction, withoutCell], ["charge", "friction"]],
    ["friction and speed", [withoutFriction, withoutPower], ["speed", "friction"]],
    ["all three", [withoutFriction, withoutPower, withoutCell], ["speed", "charge", "friction"]],
  ])("without %s: says what is left, in finite figures", (_name, changes, unknown) => {
    const book = demoWithout(...changes);
    const resolved = resolvedIn(book, id);
    expect(resolved.partial?.unknown).toEqual(unknown);
    expect(resolved.missing).toHaveLength(unknown.length);
    const answer = knownOf(book, id);
    expect(answer.moments.length).toBeGreaterThan(0);
    expectAllFinite(answer);
  });
});

describe("what can't be said at all", () => {
  it("with neither tests nor geometry of the rotor: nothing is claimed, the curve test is named", () => {
    const book = demoBook();
    const rotors = book.rotors.map((rotor) => ({ ...rotor, data: { ...rotor.data, geometry: undefined } }));
    const bare = { ...book, rotors, tests: book.tests.filter(({ data }) => data.kind !== "curve") };
    const { partial, missing } = resolvedIn(bare);
    expect(partial).toBeNull();
    expect(missing.map(({ test }) => test)).toEqual(["curve"]);
  });

  it("with its surface not in the book: nothing, for its roughness is half the leak", () => {
    const { partial } = resolvedIn({ ...demoBook(), surfaces: [] });
    expect(partial).toBeNull();
  });

  it("with motor or pack not in the book: the rotor at the speeds of its tests", () => {
    for (const gone of ["motors", "packs"] as const) {
      const book = { ...demoBook(), [gone]: [] };
      expect(resolvedIn(book).partial?.unknown).toContain("speed");
      expectAllFinite(knownOf(book));
    }
  });
});
