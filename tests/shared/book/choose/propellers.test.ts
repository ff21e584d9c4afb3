import { describe, expect, it } from "vitest";
import { buildOfCombination } from "#shared/book/choose/openedCombination.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { UnusablePartsError } from "#shared/book/choose/refusal.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { runInput } from "#shared/book/runInput.ts";
import { FLAG } from "#shared/decide/choose/columns.ts";
import { countCombinations } from "#shared/decide/choose/count.ts";
import { detailOf } from "#shared/decide/choose/detail.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { combinationUncertainty } from "#shared/decide/choose/shortlist.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { chooseRequest } from "#shared/model/api/choose.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { predictPropeller } from "#shared/physics/propeller.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const AGREED = 1e-9;

const both = chooseBody({
  rotors: [
    { rotor: "swept-nine" },
    { rotor: "pusher-three", diameters: { from: 0.09, to: 0.15, step: 0.02 } },
  ],
  skirts: [{ skirt: "square-lip", gaps: { from: 0.0004, to: 0.0006, step: 0.0001 } }, { skirt: null }],
  wants: {
    attitudes: [
      { angle: 90, mode: "parked" },
      { angle: "worst", mode: "driving" },
    ],
  },
});
const question = chooseProblem(book, both);
const prepared = prepare(question.problem);
const results = [solveChunk(prepared, 0, prepared.count)];
const open = Array.from({ length: prepared.count }, (_, index) => index).slice(
  prepared.radix.ducted.combinations,
);

describe("a search of the demo with rotors in a duct and an open propeller", () => {
  it("tries the propeller at every size on the skirt once and on none, whatever the gaps", () => {
    const { problem } = question;
    expect(problem.propellers?.map(({ id }) => id)).toEqual(["pusher-three"]);
    expect(problem.stands?.map(({ id }) => id)).toEqual(["square-lip", null]);
    expect(open).toHaveLength(2 * 4 * 1 * 2 * 2);
    expect(prepared.count).toBe(2 * 2 * (problem.rotors.flatMap(({ sizes }) => sizes).length * 3 + 4 * 2));
    expect(question.notes.map(({ code }) => code)).toContain("propeller-strength");
  });

  it("every combination with the propeller, opened as a build, has that build's thrust, margins, current and mass to 1e-9", () => {
    let turning = 0;
    for (const index of open) {
      const combination = detailOf(prepared, results, index);
      const build = buildOfCombination(book, question.base, {
        ...combination,
        mass: combination.values.mass,
      });
      expect(combination.gap).toBeNull();
      expect(build.skirt).toBe(combination.parts.skirt);
      const input = resolveBuild(book, build).propeller;
      if (!input) throw new Error("The combination has no numbers as a build.");
      expect(combination.values.mass).toBeCloseToRelative(input.vehicle.mass, AGREED);
      const { point, suction, attitudes, worst } = predictPropeller(input, [90]);
      expect((results[0].flags[index] & FLAG.noPoint) !== 0).toBe(point === null);
      if (!point) continue;
      turning += 1;
      expect(combination.values.suction).toBeCloseToRelative(suction, AGREED);
      expect(combination.values.speed).toBeCloseToRelative(point.speed, AGREED);
      expect(combination.values.packCurrent).toBeCloseToRelative(point.packCurrent, AGREED);
      expect(combination.values.windingTemperature).toBeCloseToRelative(point.windingTemperature, AGREED);
      expect(combination.values.parked).toBeCloseToRelative(attitudes[0].parked.margin ?? Number.NaN, AGREED);
      expect(combination.values.driving).toBeCloseToRelative(worst.driving.margin ?? Number.NaN, AGREED);
      expect([combination.values.flow, combination.values.pressure, combination.values.rotorFactor]).toEqual([
        null,
        null,
        null,
      ]);
    }
    expect(turning).toBeGreaterThan(open.length / 2);
  });

  it("one of them runs as long as its build's run-down says, and is sampled as any combination", () => {
    const index = open[0];
    const combination = detailOf(prepared, results, index);
    const build = buildOfCombination(book, question.base, { ...combination, mass: combination.values.mass });
    const resolved = resolveBuild(book, build);
    const run = runInput({ ...build, cycle: undefined }, resolved);
    if (!run) throw new Error("The combination has no numbers as a build.");
    const settled = { ...run, motor: { ...run.motor, thermalTimeConstant: null }, angles: [] };
    expect(combination.values.time).toBeCloseToRelative(runDown(settled).end.time, 1e-3);
    const uncertainty = { "vehicle.wheelFriction": 0.05 };
    const { chance, margin5 } = combinationUncertainty(prepared, index, { uncertainty, samples: 128 });
    expect(chance).toBeGreaterThanOrEqual(0);
    expect(margin5).toBeLessThan(Math.min(combination.values.parked ?? 0, combination.values.driving ?? 0));
  });
});

describe("a search that can't pair rotors and skirts", () => {
  it("with a rotor in a duct and no skirt at all, asks for one", () => {
    const asked = chooseProblem(book, { ...both, skirts: [{ skirt: null }] });
    expect(() => countCombinations(asked.problem)).toThrow(NotEnoughDataError);
    expect(() => countCombinations(asked.problem)).toThrow(/no skirt/);
  });

  it("with a propeller alone and no skirt, is solved", () => {
    const alone = { ...both, rotors: [{ rotor: "pusher-three" }], skirts: [{ skirt: null }] };
    expect(countCombinations(chooseProblem(book, alone).problem)).toBe(2 * 2 * 2);
  });

  it("with a gap where there is no skirt, is refused beside that field", () => {
    const asked = { ...both, skirts: [{ skirt: null, gaps: { from: 0.0004, to: 0.0004, step: 0 } }] };
    expect(chooseRequest.safeParse(asked).error?.issues[0]?.path).toEqual(["skirts", 0, "gaps"]);
  });

  it("with a propeller that no thrust test tells, names it", () => {
    const untested = { ...book, tests: book.tests.filter(({ data }) => data.kind !== "thrust") };
    expect(() => chooseProblem(untested, both)).toThrow(UnusablePartsError);
    expect(() => chooseProblem(untested, both)).toThrow(/rotors\.1: No thrust test/);
  });
});
