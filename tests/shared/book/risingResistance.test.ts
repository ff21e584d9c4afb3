import { describe, expect, it } from "vitest";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { packInAir } from "#shared/book/coldPack.ts";
import { packBasis } from "#shared/book/packBasis.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { runInput } from "#shared/book/runInput.ts";
import { holdTime } from "#shared/decide/size/holdTime.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import type { Build } from "#shared/model/build.ts";
import { cellAt } from "#shared/physics/cells/cell.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { risingResistance, withRisingResistance } from "#tests/support/risingResistance.ts";

const demo = demoBook();
const book = withRisingResistance(demo);
const crawler = demo.builds[0].data;
const at = (charge: number): Build => ({
  ...crawler,
  pack: "one-cell-650",
  charge,
  overrides: { ...crawler.overrides, series: 2 },
});
const inputAt = (charge: number) => {
  const { input } = resolveBuild(book, at(charge));
  if (!input) throw new Error("expected numbers");
  return input;
};
const basis = () => {
  const found = packBasis(book, "one-cell-650");
  if (found?.basis !== "measured") throw new Error("expected a measured pack");
  return found;
};

describe("a pack whose discharge test shows a resistance that rises towards empty", () => {
  it.each([0.9, 0.5, 0.15])("is predicted with that of its charge, %f", (charge) => {
    const { cellResistance } = inputAt(charge).pack;
    expect(cellResistance).toBe(cellAt(basis().cell, charge).resistance);
    expect(cellResistance).toBeCloseToRelative(risingResistance(charge), 0.12);
  });

  it("in the cold rises as a whole", () => {
    const cold = packInAir({ ...basis(), coldFactor: 2.5 }, 273.15);
    for (const charge of [0.05, 0.3, 0.9])
      expect(cellAt(cold.cell, charge).resistance).toBeCloseToRelative(
        2.5 * cellAt(basis().cell, charge).resistance,
        1e-12,
      );
  });

  it("goes into a run-down and into a search as it is", () => {
    const build = at(1);
    const run = runInput(build, resolveBuild(book, build));
    expect(run?.pack.cell.resistanceCurve).toEqual(basis().cell.resistanceCurve);
    const { problem } = chooseProblem(book, chooseBody({ packs: ["one-cell-650"] }));
    expect(problem.packs[0].cell.resistanceCurve).toEqual(basis().cell.resistanceCurve);
  });

  it("lasts as long down to a voltage as its run-down has it, the winding settled", () => {
    const build = at(1);
    const run = runInput(build, resolveBuild(book, build));
    if (!run) throw new Error("expected a run");
    const charge = 0.2;
    const { samples } = runDown({
      ...run,
      cycle: [],
      motor: { ...run.motor, thermalTimeConstant: null },
      pack: { ...run.pack, cell: { ...run.pack.cell, minimumVoltage: 1 } },
    });
    const after = samples.findIndex((sample) => sample.charge <= charge);
    const [a, b] = [samples[after - 1], samples[after]];
    const followed = a.time + ((a.charge - charge) / (a.charge - b.charge)) * (b.time - a.time);
    expect(holdTime(inputAt(charge), basis().cell)).toBeCloseToRelative(followed, 3e-3);
  });

  it("is as uncertain as the stretch of its charge, and the uncertain charge moves voltage and resistance together", () => {
    const build = at(0.15);
    const resolved = resolveBuild(book, build);
    const { uncertainty, followers } = buildUncertainty(book, build, resolved);
    const told = basis().fit?.resistanceByCharge ?? [];
    const [nearest] = [...told].sort((a, b) => Math.abs(a.charge - 0.15) - Math.abs(b.charge - 0.15));
    expect(uncertainty["pack.cellResistance"]).toBe(nearest.standardError);
    const sd = 0.03;
    const [low, high] = [0.15 - sd, 0.15 + sd].map((z) => cellAt(basis().cell, z));
    const follower = followers.find(({ path }) => path === "pack.cellResistance");
    expect(follower?.by["pack.openCircuitVoltage"]).toBeCloseToRelative(
      Math.log(high.resistance / low.resistance) / (high.voltage - low.voltage),
      1e-12,
    );
    const one = { uncertainty: { "pack.openCircuitVoltage": uncertainty["pack.openCircuitVoltage"] } };
    const asked = { ...one, angles: [180], samples: 512 };
    const width = (more: object) => {
      const { p5, p95 } = uncertaintyOf(inputAt(0.15), { ...asked, ...more }).attitudes[0].driving;
      return (p95 ?? Number.NaN) - (p5 ?? Number.NaN);
    };
    expect(width({ followers: follower ? [follower] : [] })).toBeGreaterThan(1.02 * width({}));
  });

  it("of one resistance has no such follower", () => {
    const build = { ...at(0.15), pack: "three-cell-850" };
    const { followers } = buildUncertainty(demo, build, resolveBuild(demo, build));
    expect(followers.map(({ path }) => path)).not.toContain("pack.cellResistance");
  });
});
