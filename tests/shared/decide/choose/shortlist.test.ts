import { describe, expect, it } from "vitest";
import { ductedInput } from "#shared/decide/choose/input.ts";
import { placesOf } from "#shared/decide/choose/places.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { combinationUncertainty, placesWithTies } from "#shared/decide/choose/shortlist.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { predict } from "#shared/physics/predict.ts";
import { question, WANTS } from "./questions.ts";

const uncertainty = { "skirt.gap": 8e-5, "vehicle.wheelFriction": 0.06, "vehicle.mass": 0.01 };
const asked = { uncertainty, samples: 512, seed: 3 };

describe("the uncertainty of a combination on a shortlist", () => {
  const prepared = prepare(question());
  const index = 305;
  const input = ductedInput(prepared.problem, placesOf(prepared.radix, index));

  it("is the least of the wanted attitudes' own, each as for the build", () => {
    const { worst } = predict(input);
    const { attitudes } = uncertaintyOf(input, { ...asked, angles: [90, 153, worst.parked.angle] });
    const [wall, roof, overhang] = attitudes;
    const spreads = [wall.parked, overhang.parked, roof.driving];
    const found = combinationUncertainty(prepared, index, asked);
    expect(found.chance).toBe(Math.min(...spreads.map(({ holds }) => holds)));
    expect(found.margin5).toBe(Math.min(...spreads.map(({ p5 }) => p5 ?? Number.POSITIVE_INFINITY)));
    expect(found.deviation).toBeGreaterThan(0);
  });

  it("is none where nothing is uncertain: the margin itself, without deviation", () => {
    const sure = combinationUncertainty(prepared, index, { uncertainty: { "skirt.gap": 0 }, samples: 16 });
    const chunk = solveChunk(prepared, index, index + 1);
    const margin = Math.min(chunk.parked[0], chunk.driving[0]);
    expect(sure.margin5).toBeCloseToRelative(margin, 1e-10);
    expect(sure.deviation).toBeLessThan(1e-9);
    expect(sure.chance).toBe(margin >= 1 ? 1 : 0);
  });

  it("holds for sure where no attitude is wanted", () => {
    const none = prepare(question({ wants: { ...WANTS, attitudes: [] } }));
    expect(combinationUncertainty(none, 0, asked)).toEqual({
      index: 0,
      chance: 1,
      margin5: null,
      deviation: 0,
    });
  });
});

describe("places with ties", () => {
  const ranked = (values: number[], deviation: number) =>
    values.map((value, index) => ({ index, value, deviation }));

  it("are shared by combinations that differ from the first of their place by no more than their uncertainty", () => {
    expect(placesWithTies(ranked([2, 1.95, 1.87, 1.8, 1.2], 0.1))).toEqual([1, 1, 1, 4, 5]);
  });

  it("are all different without uncertainty, but for equals", () => {
    expect(placesWithTies(ranked([3, 2, 2, 1], 0))).toEqual([1, 2, 2, 4]);
  });

  it("of nothing are none", () => {
    expect(placesWithTies([])).toEqual([]);
  });
});
