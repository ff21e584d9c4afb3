import { informationOf, powers, sharesOf } from "../../../../shared/fit/information.ts";
import { type FamilyReading, type RotorFamily, readingsInUse } from "./family.ts";
import { groupsOf, type ReadingGroup } from "./groups.ts";

export interface Contribution {
  readonly test: number;
  readonly used: number;
  readonly aside: number;
  readonly diameter: number;
  /** its readings by speed */
  readonly groups: readonly ReadingGroup[];
  readonly phiMin: number;
  readonly phiMax: number;
  /** root mean square residual over ψ with no flow; null without a fit [-] */
  readonly rms: number | null;
  /** of what fixes the curve; null where nothing judges it [-] */
  readonly share: number | null;
}

const rootMeanSquare = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

function rmsOf(readings: readonly FamilyReading[]): number | null {
  const residuals = readings.flatMap(({ residual }) => (residual === null ? [] : [residual]));
  return residuals.length === 0 ? null : rootMeanSquare(residuals);
}

/** @returns rms of every reading in use over ψ with no flow; null without a fit */
export function familyRms(family: RotorFamily): number | null {
  return rmsOf(readingsInUse(family));
}

/** @returns what each test brings to the curve, in the order of the family's tests */
export function contributions(family: RotorFamily): Contribution[] {
  const used = readingsInUse(family);
  const inverse = family.fit && informationOf(family.fit);
  const shares =
    inverse &&
    sharesOf(
      inverse,
      used.map(({ phi, weight, test }) => ({ row: powers(phi, inverse.length), weight, group: test })),
      family.tests.length,
    );
  return family.tests.map((_, test) => {
    const all = family.readings.filter((reading) => reading.test === test);
    const own = all.filter((reading) => reading.aside === null);
    const phis = own.map((reading) => reading.phi);
    return {
      test,
      used: own.length,
      aside: all.length - own.length,
      diameter: all[0]?.diameter ?? 0,
      groups: groupsOf(own),
      phiMin: Math.min(...phis),
      phiMax: Math.max(...phis),
      rms: rmsOf(own),
      share: shares && own.length > 0 ? shares[test] : null,
    };
  });
}
