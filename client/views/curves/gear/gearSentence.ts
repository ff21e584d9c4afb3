import { heightUnder } from "../../../../shared/fit/rideHeightFit.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { gapText } from "../../../ui/gapWords.ts";
import type { GearPage } from "./gearData.ts";

const HUNDRED_GRAMS = 0.1 * 9.80665;

/** @returns how stiff a running gear is, one sentence */
export function gearSentence({ gear, tested, points }: GearPage): string {
  const { name } = gear.data;
  if (!tested.fit)
    return points.length === 0
      ? `How far ${name} gives is not known, so the gap is taken as rigid.`
      : `How far ${name} gives is not settled yet.`;
  const given = HUNDRED_GRAMS / tested.fit.stiffness;
  const uncertain = (given * (tested.uncertainty ?? 0)) / tested.fit.stiffness;
  return `On ${name} the lip comes down by ${gapText(given, uncertain)} for every 100\u202fg.`;
}

/** @returns at which load the skirt comes down to the surface; null without a fit */
export function touchText({ tested }: GearPage): string | null {
  if (!tested.fit) return null;
  const { height } = heightUnder(tested.fit, 0);
  const load = height * tested.fit.stiffness;
  return `about ${formatQuantity(load, "heavyLoad", { digits: 2 })} on top of its own weight`;
}

/** Relative uncertainty of the stiffness from which more readings are worth the while [-]. Judgement. */
const COARSE = 0.1;

/** @returns what to measure next, in words */
export function gearMissing({ tested, points }: GearPage): string {
  if (points.length === 0)
    return "A ride-height test: the lip's height over a flat plate with the vehicle alone, and with weights on it. Two loads are enough.";
  if (!tested.fit) return tested.why ?? "Every reading is set aside.";
  const loads = new Set(points.filter(({ aside }) => aside === null).map(({ load }) => load));
  if (loads.size < 3) return "A third load between the two would show whether the line is straight.";
  if ((tested.uncertainty ?? 0) > COARSE * tested.fit.stiffness)
    return "The stiffness is known to more than 10 %: twice the range of loads would halve it, four times the readings as well.";
  return "Nothing at these loads. Tyres harden with age and cold: read again when they are changed.";
}
