import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import type { Change, Effects } from "../../../../shared/decide/ways/effects.ts";
import type { Way } from "../../../../shared/decide/ways/ways.ts";
import {
  formatFixed,
  formatQuantity,
  fromUnit,
  inUnit,
  THIN_SPACE,
  withUnit,
} from "../../../../shared/units/format.ts";
import { differenceUnitOf, shownUnit, unitOf } from "../../../../shared/units/showing.ts";
import { decimalsShown } from "../../../../shared/units/shown.ts";
import { WAY_NAMES, type WayName } from "./names.ts";
import { decimalsApart, roundedSafely } from "./rounding.ts";

const [PERCENT, MINUTE] = [100, 60];

const decimalsIn = (name: WayName) => decimalsShown(name, name.decimals);
const shownOf = (name: WayName, si: number) => (name.dimension ? inUnit(si, name.dimension) : si);

/** A number in the handle's unit: "0.42 mm", "3.90 V a cell". */
function said(name: WayName, shown: number, decimals = decimalsIn(name)): string {
  const text = withUnit(formatFixed(shown, decimals), name.dimension ? unitOf(name.dimension) : "");
  return name.after ? `${text} ${name.after}` : text;
}

/** The stretch that meets the target, each end rounded into it. */
function stretchText(name: WayName, from: number, to: number): string {
  const [low, high] = [shownOf(name, from), shownOf(name, to)];
  const decimals = decimalsApart(low, high, decimalsIn(name));
  const least = formatFixed(roundedSafely(low, "at-least", decimals), decimals);
  return `${least} to ${said(name, roundedSafely(high, "at-most", decimals), decimals)}`;
}

/** How far a handle must go: "≤ 0.42 mm", "47.2 to 64.7 mm". */
function boundText(name: WayName, { from, to, value, bound }: Way): string {
  if (from !== null && to !== null && from !== to) return stretchText(name, from, to);
  const shown = roundedSafely(shownOf(name, value ?? 0), bound, decimalsIn(name));
  return `${bound === "at-most" ? "≤" : "≥"} ${said(name, shown)}`;
}

/** How far a handle may go that already does: "up to 0.61 mm". */
function slackText(name: WayName, way: Way): string {
  const { from, to, value, bound } = way;
  if (value === null) return "any value";
  if (from !== null && to !== null) return stretchText(name, from, to);
  const shown = roundedSafely(shownOf(name, value), bound, decimalsIn(name));
  if (value === way.now) return `no ${bound === "at-most" ? "more" : "fewer"} than ${shown}`;
  return `${bound === "at-most" ? "up to" : "down to"} ${said(name, shown)}`;
}

function neverText(name: WayName, { best, now }: Way): string {
  const at = best.value === now ? "as it stands" : `at ${said(name, shownOf(name, best.value))}`;
  return `no value of this alone works; ${marginText(best.margin)} at best, ${at}`;
}

/** A row of Ways to hold. */
export interface WayCells {
  readonly label: string;
  readonly now: string;
  /** how far it must go, or may; or that no value does */
  readonly goal: string;
}

/** @returns what a handle alone can do, as a row: "Gap", "0.61 mm", "≤ 0.42 mm" */
export function wayCells(way: Way): WayCells {
  const name = WAY_NAMES[way.handle];
  const goals = { never: neverText, does: boundText, already: slackText };
  return {
    label: name.label,
    now: said(name, shownOf(name, way.now)),
    goal: goals[way.state](name, way),
  };
}

/** @returns the same as one line: "Gap ≤ 0.42 mm", "Rotor 47.2 to 64.7 mm" */
export function wayText(way: Way): string {
  const { label, goal } = wayCells(way);
  return `${label}${way.state === "never" ? ":" : ""} ${goal}`;
}

const signed = (value: number, decimals: number) => `${value < 0 ? "" : "+"}${formatFixed(value, decimals)}`;
const differs = (change: Change | null, least: number): change is Change =>
  change !== null && Math.abs(change.after - change.now) >= least;

/** @returns what a change costs or brings beside the margin: "+9 K winding, 12 % more rotor stress, 1.4 min less" */
export function effectsText({ windingTemperature, rotorStress, runTime, tipSpeed }: Effects): string {
  const parts: string[] = [];
  if (differs(windingTemperature, 0.5))
    parts.push(
      `${signed((windingTemperature.after - windingTemperature.now) / shownUnit("temperature").factor, 0)}${THIN_SPACE}${differenceUnitOf("temperature")} winding`,
    );
  const stress = Math.round(PERCENT * ((rotorStress ?? 1) - 1));
  if (stress !== 0)
    parts.push(`${Math.abs(stress)}${THIN_SPACE}% ${stress > 0 ? "more" : "less"} rotor stress`);
  const minutes = runTime ? (runTime.after - runTime.now) / MINUTE : 0;
  if (Math.abs(minutes) >= 0.05)
    parts.push(`${formatFixed(Math.abs(minutes), 1)}${THIN_SPACE}min ${minutes > 0 ? "more" : "less"}`);
  if (parts.length > 0) return parts.join(", ");
  return tipSpeed === null ? "the rotor stands still as the build is" : "no cost in heat, stress or time";
}

/** @returns that the winding would be warmer than it is and past its limit, where it would */
export function windingCaution({ windingTemperature }: Effects, limit: number | null): string | null {
  if (limit === null || !differs(windingTemperature, 0.5)) return null;
  if (windingTemperature.after <= Math.max(limit, windingTemperature.now)) return null;
  const [hot, most] = [windingTemperature.after, limit].map((kelvin) =>
    formatQuantity(kelvin, "temperature", { decimals: 0 }),
  );
  return `Winding at ${hot}; it takes ${most}`;
}

/** @returns SI value to try: the shown one, rounded to the safe side; as found where rounding would leave the stretch */
export function valueToTry(way: Way & { readonly charge: number | null }): number | null {
  const { handle, value, bound, from, to, charge } = way;
  const name = WAY_NAMES[handle];
  if (value === null || name.handle === null) return null;
  if (handle === "cellVoltage") {
    if (charge === null) return null;
    const percent = roundedSafely(charge * PERCENT, bound, 0) / PERCENT;
    return percent >= 0 && percent <= 1 ? percent : charge;
  }
  const shown = roundedSafely(shownOf(name, value), bound, decimalsIn(name));
  const si = name.dimension ? fromUnit(shown, name.dimension) : shown;
  const inside = si >= (from ?? way.limits[0]) && si <= (to ?? way.limits[1]);
  return inside ? si : value;
}
