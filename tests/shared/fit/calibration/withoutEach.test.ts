import { describe, expect, it } from "vitest";
import { type CalibrationPull, calibrate, gapWithoutEach } from "#shared/fit/calibration.ts";
import { normals, pulledOnce, rigAt } from "#tests/support/calibrationRig.ts";

const prior = { gap: { mean: 6e-4, sd: 2e-4 }, friction: { mean: 0.7, sd: 0.15 } };
const TRUTH = { gap: 4.5e-4, friction: 0.62, scatter: 0.05 };
const normal = normals(31);
const directions = ["straight-off", "ceiling", "along"] as const;
const pulls = Array.from({ length: 36 }, (_, i) =>
  pulledOnce(directions[i % 3], 4.15 - 0.05 * (i % 9), TRUTH, normal),
);
const without = (group: readonly number[], of: readonly CalibrationPull[] = pulls) =>
  calibrate({ prior, pulls: of.filter((_, i) => !group.includes(i)) }).gap;

describe("gapWithoutEach", () => {
  it("of a few pulls among many: what a calibration without them says", () => {
    const groups = [[0], [4], [7, 8, 9], [35]];
    gapWithoutEach({ prior, pulls }, groups).forEach((gap, k) => {
      const anew = without(groups[k]);
      expect(Math.abs((gap?.mean ?? 0) - anew.mean)).toBeLessThan(1e-3 * anew.sd);
      expect(gap?.sd).toBeCloseToRelative(anew.sd, 1e-3);
    });
  });

  it("of one pull so far off that it makes the scatter: null, of the others beside it the same as anew", () => {
    const odd = pulls.with(4, { ...pulls[4], held: 8.4, letGo: 8.6 });
    const [own, other] = gapWithoutEach({ prior, pulls: odd }, [[4], [0]]);
    const anew = without([0], odd);
    expect(own).toBeNull();
    expect(Math.abs((other?.mean ?? 0) - anew.mean)).toBeLessThan(1e-3 * anew.sd);
  });

  it("of most of the pulls, or of all: null, the places of the whole are the wrong ones", () => {
    const all = pulls.map((_, i) => i);
    expect(gapWithoutEach({ prior, pulls }, [all.slice(4), all])).toEqual([null, null]);
  });

  it("of a pull that says nothing, and beside one: nothing changes, places are those of the request", () => {
    const nothing = { input: rigAt(4.1), direction: "ceiling", held: 0, letGo: null } as const;
    const request = { prior, pulls: [nothing, ...pulls] };
    const { gap } = calibrate({ prior, pulls });
    const [empty, first] = gapWithoutEach(request, [[0], [1]]);
    expect(empty?.mean).toBeCloseToRelative(gap.mean, 1e-12);
    expect(empty?.sd).toBeCloseToRelative(gap.sd, 1e-12);
    expect(first).toEqual(gapWithoutEach({ prior, pulls }, [[0]])[0]);
  });
});
