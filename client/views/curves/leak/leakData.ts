import { type Book, findById, type StoredTest, testsOf } from "../../../../shared/book/book.ts";
import { leakBasis } from "../../../../shared/book/leakBasis.ts";
import { leakPoints } from "../../../../shared/book/readings/leak.ts";
import { airOfDay } from "../../../../shared/book/readings/reading.ts";
import { skirtInput } from "../../../../shared/book/skirtInput.ts";
import type { LeakFit } from "../../../../shared/fit/leakFit.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import type { Air } from "../../../../shared/physics/air.ts";
import { leakFlow } from "../../../../shared/physics/restriction/leak.ts";
import { skirtLeak, taped } from "../../../../shared/physics/skirt.ts";
import { toSI } from "../../../../shared/units/quantity.ts";
import type { Source } from "../chosen.ts";
import { testName } from "../typed.ts";

export interface LeakPoint extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: string | null;
  /** [Pa] */
  readonly pressure: number;
  /** [m³/s] */
  readonly flow: number;
}

/** Leak tests of one skirt on one surface at one gap. */
export interface LeakGroup {
  readonly key: string;
  readonly skirt: StoredOf<"skirts">;
  readonly surface: StoredOf<"surfaces">;
  /** stand-off: the shim, or the skirt's set gap [m] */
  readonly gap: number;
  readonly fit: LeakFit | null;
  readonly points: readonly LeakPoint[];
  readonly air: Air;
}

export interface LeakPage {
  readonly groups: readonly LeakGroup[];
  readonly tests: readonly { readonly id: string; readonly title: string }[];
}

const MICRO = 1e6;

function gapOf(test: StoredTest<"leak">, skirt: StoredOf<"skirts">): number {
  return test.data.gap ? toSI(test.data.gap, "length") : skirt.data.gap;
}

function pointsOf(test: StoredTest<"leak">, index: number): LeakPoint[] {
  return leakPoints(test.data).map((point) => ({
    key: `${test.id}#${point.row}`,
    testId: test.id,
    row: point.row,
    test: index,
    aside: point.setAside,
    pressure: point.pressure,
    flow: point.flow,
  }));
}

/** @returns the leak tests with this skirt or on this surface, those at one gap together */
export function leakPage(book: Book, part: "skirt" | "surface", id: string): LeakPage {
  const tests = testsOf(book, "leak").filter((test) => test.data[part] === id);
  const groups = new Map<string, { first: LeakGroup; points: LeakPoint[] }>();
  tests.forEach((test, index) => {
    const skirt = findById(book.skirts, test.data.skirt);
    const surface = findById(book.surfaces, test.data.surface);
    if (!skirt || !surface) return;
    const gap = gapOf(test, skirt);
    const key = `${skirt.id} ${surface.id} ${Math.round(gap * MICRO)}`;
    const points = pointsOf(test, index);
    const known = groups.get(key);
    if (known) {
      known.points.push(...points);
      return;
    }
    const fit = leakBasis(book, skirt.id, surface.id, { value: gap, standing: skirt.data.gap })?.fit ?? null;
    const air = airOfDay(test.data.air);
    groups.set(key, { first: { key, skirt, surface, gap, fit, points, air }, points });
  });
  return {
    groups: [...groups.values()].map(({ first }) => first),
    tests: tests.map((test) => {
      const stored = findById(book.tests, test.id);
      return { id: test.id, title: stored ? testName(stored) : test.id };
    }),
  };
}

/** @returns flow that the lip-gap law gives for the same skirt, surface and gap, its listed openings taped as in the test [m³/s] */
export function lipFlow(group: LeakGroup, pressure: number): number {
  const skirt = skirtInput(group.skirt, group.surface.data.roughness, group.gap, null);
  return leakFlow(skirtLeak(taped(skirt), group.air), group.air, pressure);
}
