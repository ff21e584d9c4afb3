import type { LipLeakTest } from "../fit/gapHeight.ts";
import { type JointRoughness, jointRoughness, type RoughnessSet } from "../fit/roughnessJoint.ts";
import type { StoredOf } from "../model/record.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { taped } from "../physics/skirt.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, findById, oncePerBook, type StoredTest, testsOf } from "./book.ts";
import { leakPoints } from "./readings/leak.ts";
import { airOfDay, inUse } from "./readings/reading.ts";
import { skirtInput } from "./skirtInput.ts";

/** How much a surface makes a lip stand off, and what that rests on. */
export interface SurfaceRoughness {
  readonly basis: "stated" | "measured separately";
  /** allowance [m] */
  readonly value: number;
  /** standard uncertainty; null where none is stated [m] */
  readonly sd: number | null;
  /** leak tests that measured it */
  readonly testIds: readonly string[];
  /** the smooth surface that it was held against */
  readonly against: StoredOf<"surfaces"> | null;
  /** what the tests say, whether or not it is used; null where none can be compared */
  readonly told: JointRoughness | null;
  /** leak tests that say it */
  readonly toldBy: readonly string[];
  /** why the stated value stands, and what to measure; null where it was measured separately */
  readonly missing: string | null;
}

type LeakTests = readonly StoredTest<"leak">[];

/** A difference within this many standard uncertainties may be chance [-]. */
const CLEAR = 2;
const MICRO = 1e6;

function gapKey({ data }: StoredTest<"leak">, book: Book): string | null {
  const gap = data.gap ? toSI(data.gap, "length") : findById(book.skirts, data.skirt)?.data.gap;
  return gap === undefined ? null : `${data.skirt} ${Math.round(gap * MICRO)}`;
}

/** Only one skirt at one gap is compared: another skirt, or another shim, stands otherwise. The air may differ, each test is read at its own. */
function comparable(
  book: Book,
  rough: LeakTests,
  smooth: LeakTests,
): { sets: RoughnessSet[]; testIds: string[] } {
  const keys = [...new Set(rough.map((test) => gapKey(test, book)))];
  const sets: RoughnessSet[] = [];
  const testIds: string[] = [];
  for (const key of keys) {
    if (key === null) continue;
    const own = (tests: LeakTests) => tests.filter((test) => gapKey(test, book) === key);
    const [surface, other] = [own(rough), own(smooth)];
    const skirt = findById(book.skirts, surface[0].data.skirt);
    if (!skirt || other.length === 0) continue;
    sets.push({
      rig: taped(skirtInput(skirt, 0, skirt.data.gap, null)),
      surface: surface.map(readTest),
      smooth: other.map(readTest),
    });
    testIds.push(...surface.map(({ id }) => id), ...other.map(({ id }) => id));
  }
  return { sets, testIds };
}

function readTest({ data }: StoredTest<"leak">): LipLeakTest {
  return { points: inUse(leakPoints(data)), air: airOfDay(data.air) };
}

/** Surfaces that are no rougher by their own statement, the smoothest first. */
function references(book: Book, surface: StoredOf<"surfaces">): StoredOf<"surfaces">[] {
  return book.surfaces
    .filter(({ id, data }) => id !== surface.id && data.roughness <= surface.data.roughness)
    .sort((a, b) => a.data.roughness - b.data.roughness);
}

interface Comparison {
  readonly against: StoredOf<"surfaces">;
  readonly told: JointRoughness;
  readonly testIds: readonly string[];
}

function compared(book: Book, surface: StoredOf<"surfaces">, rough: LeakTests): Comparison | null {
  for (const against of references(book, surface)) {
    const smooth = testsOf(book, "leak").filter(({ data }) => data.surface === against.id);
    const { sets, testIds } = comparable(book, rough, smooth);
    if (sets.length === 0) continue;
    try {
      return { against, told: jointRoughness(sets), testIds };
    } catch (error) {
      if (!(error instanceof NotEnoughDataError)) throw error;
    }
  }
  return null;
}

function whatIsMissing(book: Book, surface: StoredOf<"surfaces">, rough: LeakTests): string {
  const [smoothest] = references(book, surface);
  const glass = smoothest ? smoothest.data.name : "clean glass";
  const [first] = rough;
  if (!first)
    return `Leak tests with one skirt at one gap, on ${surface.data.name} and on ${glass}, would measure the roughness separately.`;
  const skirt = findById(book.skirts, first.data.skirt)?.data.name ?? "the same skirt";
  return `A leak test of ${skirt} on ${glass}, set as it was on ${surface.data.name}, would measure the roughness separately: three readings or more on each.`;
}

/** Too near for its scatter, or on the wrong side. */
function whyNot({ against, told }: Comparison, surface: StoredOf<"surfaces">): string | null {
  const name = against.data.name;
  if (told.difference < -CLEAR * told.uncertainty)
    return against.data.roughness === surface.data.roughness
      ? `It leaks less than ${name}: it is the smoother of the two, and ${name} is held against it.`
      : `It leaks less than ${name}, which is stated as smoother: the skirt did not stand the same in the tests. Repeat both.`;
  if (told.difference >= CLEAR * told.uncertainty) return null;
  const times = Math.ceil((CLEAR * told.uncertainty) ** 2 / told.difference ** 2);
  const more =
    Number.isFinite(times) && times <= MOST_TIMES
      ? `About ${times} times as many readings would tell a difference of this size.`
      : "If there is a difference, it is too small for this leak to show.";
  return `It leaks like ${name}: the tests differ by no more than their scatter. ${more}`;
}

/** Readings more often than this nobody repeats [-]. Judgement. */
const MOST_TIMES = 20;

/** @returns under which key a book has a surface's roughness */
export const roughnessKey = (id: string): string => `roughness ${id}`;

function answerFor(book: Book, surface: StoredOf<"surfaces">): SurfaceRoughness {
  const { roughness, uncertainty } = surface.data;
  const stated = {
    basis: "stated",
    value: roughness,
    sd: uncertainty.roughness ?? null,
    testIds: [],
    against: null,
    told: null,
    toldBy: [],
  } as const;
  const rough = testsOf(book, "leak").filter(({ data }) => data.surface === surface.id);
  const comparison = rough.length > 0 ? compared(book, surface, rough) : null;
  if (!comparison) return { ...stated, missing: whatIsMissing(book, surface, rough) };
  const { against, told, testIds } = comparison;
  const missing = whyNot(comparison, surface);
  if (missing !== null) return { ...stated, against, told, toldBy: testIds, missing };
  const ofReference = against.data.uncertainty.roughness ?? 0;
  return {
    basis: "measured separately",
    value: against.data.roughness + told.difference,
    sd: Math.hypot(told.uncertainty, ofReference),
    testIds,
    against,
    told,
    toldBy: testIds,
    missing: null,
  };
}

/**
 * Roughness allowance of a surface: measured separately by leak tests on it and on a smoother one, else as stated.
 *
 * Compared are tests of the same skirt at the same gap (its shim, or its set gap), each read at the air of its own day; the
 * smoothest surface with such a test is the reference, and its stated roughness is added. Several skirts, gaps and repeats
 * are brought together by {@link jointRoughness}. A difference within two standard uncertainties is not used.
 *
 * @returns the allowance with its standard uncertainty [m], and what it rests on
 */
export function surfaceRoughness(book: Book, surface: StoredOf<"surfaces">): SurfaceRoughness {
  return oncePerBook(book, roughnessKey(surface.id), () => answerFor(book, surface));
}
