import { describe, expect, it } from "vitest";
import { solvedSuctions, tracedSuctions } from "#shared/fit/calibration/suctions.ts";
import { suctionsOver } from "#shared/fit/calibration/suctionsOver.ts";
import { RIG, rigAt } from "#tests/support/calibrationRig.ts";

/** A curve that dips: it meets the leak of a gap of about 2.5 to 4 mm three times. */
const WAVED = { ...RIG, rotor: { ...RIG.rotor, psi: [0.5, -11.4167, 87.5, -183.3333] } };
const upTo = (widest: number) => Array.from({ length: 65 }, (_, i) => (i * widest) / 64);

describe("suctionsOver", () => {
  it.each([2.2e-3, 2.8e-3, 3.2e-3, 4e-3, 6e-3])(
    "of a curve that dips, up to %s m: the same as by a balance of torques at each gap",
    (widest) => {
      const solved = solvedSuctions(WAVED, upTo(widest));
      suctionsOver(WAVED, upTo(widest)).forEach((force, i) => {
        expect(force).toBeCloseToRelative(solved[i], 1e-9);
      });
    },
  );

  it("of a curve that can be followed all the way: traced; of a motor that does not turn: 0", () => {
    expect(suctionsOver(RIG, upTo(1.5e-3))).toEqual(tracedSuctions(RIG, upTo(1.5e-3)));
    expect(suctionsOver(rigAt(1e-4), upTo(1.5e-3))).toEqual(upTo(1.5e-3).map(() => 0));
  });

  it("of a curve that dips: is not traced all the way", () => {
    expect(tracedSuctions(WAVED, upTo(3.2e-3))).toBeNull();
  });
});
