import { informationOf, powers } from "../../../../shared/fit/information.ts";
import { type MissingReadings, missingReadings } from "../../../../shared/fit/missingReadings.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { bandQuantile, weightNear } from "./bands.ts";
import type { RotorFamily } from "./family.ts";
import type { MissingInUnits } from "./sentence.ts";
import { type Shown, unitsOf } from "./shown.ts";

/** @returns which readings would shrink the band most over all of the curve that is used; null where nothing judges it or nothing helps */
export function nextReadings(family: RotorFamily): MissingReadings | null {
  const { fit, phiFree } = family;
  const inverse = fit && informationOf(fit);
  if (!fit || !inverse) return null;
  return missingReadings({
    inverse,
    row: (phi) => powers(phi, inverse.length),
    dof: fit.dof,
    weight: weightNear(family),
    from: 0,
    to: phiFree ?? fit.phiMax,
    quantile: bandQuantile,
  });
}

/** Enough decimals to tell the two ends of a range apart. */
function decimalsBetween(from: number, to: number): number {
  const width = to - from || Math.abs(to) || 1;
  return Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(width))));
}

/** @returns the readings to take in what the chart shows: φ, or the flow at its speed and size */
export function missingInUnits(
  family: RotorFamily,
  shown: Shown,
  missing: MissingReadings | null,
): MissingInUnits | null {
  if (!missing) return null;
  const units = unitsOf(family, shown);
  const [from, to] = [units.x(missing.from), units.x(missing.to)];
  const decimals = decimalsBetween(from, to);
  const flows = shown.as === "pressure";
  return {
    count: missing.count,
    from: `${flows ? "" : "φ = "}${from === 0 ? "0" : formatFixed(from, decimals)}`,
    to: formatFixed(to, decimals),
    unit: flows ? unitOf("flow") : "",
    at: flows
      ? `at ${formatQuantity(shown.rpm * RPM, "speed", { decimals: 0 })} and ${formatQuantity(shown.diameter, "length")}`
      : "",
    shrinks: missing.shrinks,
  };
}
