import { type Strength, type StrengthTrial, strengthOf } from "../strength/strength.ts";
import type { FrictionGroup, Slide } from "./frictionData.ts";

const DEGREES = 180 / Math.PI;

/** @returns tilt at which a friction slides [°] */
export const tiltOf = (mu: number): number => DEGREES * Math.atan(Math.max(0, mu));

/** A tilt at which it slid, none that held: read while the board rose steadily. */
function trialOf({ key, testId, row, test, aside, held, slid }: Slide): StrengthTrial {
  const high = slid === null ? Number.POSITIVE_INFINITY : Math.tan(slid);
  const low = held === null ? (slid === null ? Number.NEGATIVE_INFINITY : high) : Math.tan(held);
  const begun = held === 0 ? Number.NEGATIVE_INFINITY : low;
  return { key, testId, row, test, aside: aside !== null, low: begun, high };
}

/** @returns the slides of one contact as a strength: that of μ from slide to slide, shown as tilt */
export function frictionStrength(group: FrictionGroup): Strength {
  return strengthOf({
    trials: group.slides.map(trialOf),
    shown: tiltOf,
    off: (mu, mean) => tiltOf(mu) - tiltOf(mean),
    words: {
      one: "slide",
      step: "tilt",
      ends: "slid",
      axis: "tilt, °",
      offAxis: "off the tilt of μ, °",
      event: "slid, %",
      figure: "μ",
    },
  });
}
