import type { BenchTest } from "../model/tests/index.ts";
import { answerOrNull } from "../numeric/errors.ts";
import type { Book } from "./book.ts";
import { fingerprint } from "./fingerprint.ts";
import { type MotorBasis, motorBasis, motorKey } from "./motorBasis.ts";
import { newestFirst } from "./newestFirst.ts";
import { type PackBasis, packBasis, packKey } from "./packBasis.ts";
import { type PropellerBasis, propellerBasis, propellerKey } from "./propellerBasis.ts";
import { type RotorBasis, rotorBasis, rotorKey } from "./rotorBasis.ts";
import { roughnessKey, type SurfaceRoughness, surfaceRoughness } from "./roughnessBasis.ts";
import { countedTests, countsKey, type TestCounts, testCounts } from "./testCounts.ts";
import { EVERY_FIT, type TestsAsked } from "./testsAsked.ts";
import { type Rig, testsOfRigs } from "./testsOfRigs.ts";

/** By what a test names a part, and the part's collection. */
const PARTS = {
  rotor: "rotors",
  motor: "motors",
  pack: "packs",
  skirt: "skirts",
  surface: "surfaces",
  gear: "gears",
} as const;
const NAMES = Object.keys(PARTS) as readonly (keyof typeof PARTS)[];

type ById<T> = Readonly<Record<string, T>>;
type RotorFitted = Omit<RotorBasis, "fit" | "points" | "testIds">;
type PropellerFitted = Omit<PropellerBasis, "points" | "testIds" | "motorTestIds">;
type MotorFitted = Omit<MotorBasis, "fit" | "rows" | "testIds">;
type SurfaceFitted = Pick<SurfaceRoughness, "basis" | "value" | "sd" | "missing">;
type PackFitted = Omit<PackBasis, "fit" | "chemistry" | "testIds">;

/** What the tests of a book come to, part by part, without the readings. A part whose tests make no fit has none here. */
export interface BookFits {
  /** how many tests name each part of the book, by kind */
  readonly tests: Readonly<Record<keyof typeof PARTS, ById<TestCounts>>>;
  /** by curve tests */
  readonly rotors: ById<RotorFitted>;
  /** by thrust tests */
  readonly propellers: ById<PropellerFitted>;
  readonly motors: ById<MotorFitted>;
  readonly packs: ById<PackFitted>;
  /** roughness of surfaces with a leak test */
  readonly surfaces: ById<SurfaceFitted>;
}

/** Answers as `make` does, or as it did for the same place from the same records. */
export type Once = <T>(place: string, from: string, make: () => T) => T;

type Test = Book["tests"][number];

/** The part that a test makes a fit of; null where it makes none by itself. */
function fittedPart(data: BenchTest): string | null {
  if (data.kind === "curve" || data.kind === "thrust") return data.rotor;
  if (data.kind === "motor") return data.motor;
  return data.kind === "discharge" ? data.pack : null;
}

const placeOf = (kind: BenchTest["kind"], id: string): string => `${kind} ${id}`;

/** The tests that make fits, by kind and part. */
function byPlace(tests: readonly Test[]): ReadonlyMap<string, Test[]> {
  const found = new Map<string, Test[]>();
  for (const test of tests) {
    const id = fittedPart(test.data);
    if (id === null) continue;
    const place = placeOf(test.data.kind, id);
    const list = found.get(place);
    if (list) list.push(test);
    else found.set(place, [test]);
  }
  return found;
}

/** Something for each part that has it, by identifier. */
function each<T>(
  parts: readonly { readonly id: string }[],
  make: (id: string) => T | null,
): Record<string, T> {
  const made = parts.map(({ id }) => [id, make(id)] as const);
  return Object.fromEntries(made.filter((entry): entry is [string, T] => entry[1] !== null));
}

function rotorFitted(book: Book, id: string): RotorFitted | null {
  const answer = answerOrNull(() => rotorBasis(book, id));
  if (!answer || answer.basis === "missing" || answer.fit === null) return null;
  const { fit: _fit, points: _points, testIds: _tests, ...fitted } = answer;
  return fitted;
}

function propellerFitted(book: Book, id: string): PropellerFitted | null {
  const answer = answerOrNull(() => propellerBasis(book, id));
  if (answer?.basis !== "measured") return null;
  const { points: _points, testIds: _tests, motorTestIds: _motors, ...fitted } = answer;
  return fitted;
}

function motorFitted(book: Book, id: string): MotorFitted | null {
  const answer = answerOrNull(() => motorBasis(book, id));
  if (answer?.basis !== "measured") return null;
  const { fit: _fit, rows: _rows, testIds: _tests, ...fitted } = answer;
  return fitted;
}

function packFitted(book: Book, id: string): PackFitted | null {
  const answer = answerOrNull(() => packBasis(book, id));
  if (answer?.basis !== "measured") return null;
  const { fit: _fit, chemistry: _none, testIds: _tests, ...fitted } = answer;
  return fitted;
}

/**
 * What the tests of a book come to, part by part: how many there are, and the numbers that they make of rotors, motors and packs.
 *
 *     each part's numbers from its own tests alone, a rotor's with those of the motors that turned it; the newest test first
 *
 * @param book - the whole bench book
 * @param once - keeps each part's numbers as long as they are worked out from the same records; worked out anew unless given
 * @returns parts whose tests make no fit left out of the fits: too few, or none
 *
 * Source: {@link rotorBasis}, {@link propellerBasis}, {@link motorBasis}, {@link packBasis}
 */
export function fitsOf(book: Book, once: Once = (_place, _from, make) => make()): BookFits {
  const counted = countedTests(book.tests, NAMES);
  const places = byPlace(newestFirst(book.tests));
  const of = (kind: BenchTest["kind"], id: string) => places.get(placeOf(kind, id)) ?? [];
  const fitted = <T>(
    name: "rotors" | "motors" | "packs",
    kind: BenchTest["kind"],
    make: (of: Book, id: string) => T | null,
  ) =>
    each(book[name], (id) => {
      const own = of(kind, id);
      if (own.length === 0) return null;
      const part = { ...book, tests: [...own, ...behind(own, of)] };
      return once(placeOf(kind, id), madeFrom(part, id), () => make(part, id));
    });
  return {
    tests: Object.fromEntries(
      NAMES.map((name) => [name, each(book[PARTS[name]], (id) => counted.get(name)?.get(id) ?? {})]),
    ) as BookFits["tests"],
    rotors: fitted("rotors", "curve", rotorFitted),
    propellers: fitted("rotors", "thrust", propellerFitted),
    motors: fitted("motors", "motor", motorFitted),
    packs: fitted("packs", "discharge", packFitted),
    surfaces: surfacesFitted(book),
  };
}

/** A surface's roughness, by the leak tests on it and those of the same skirts elsewhere. */
function surfacesFitted(book: Book): Record<string, SurfaceFitted> {
  const bySkirt = new Map<string, Test[]>();
  const skirtsOn = new Map<string, Set<string>>();
  for (const test of newestFirst(book.tests)) {
    if (test.data.kind !== "leak") continue;
    const { skirt, surface } = test.data;
    const own = bySkirt.get(skirt);
    if (own) own.push(test);
    else bySkirt.set(skirt, [test]);
    skirtsOn.set(surface, (skirtsOn.get(surface) ?? new Set()).add(skirt));
  }
  return each(book.surfaces, (id) => {
    const skirts = [...(skirtsOn.get(id) ?? [])];
    const surface = book.surfaces.find((record) => record.id === id);
    if (!surface || skirts.length === 0) return null;
    const part = { ...book, tests: newestFirst(skirts.flatMap((skirt) => bySkirt.get(skirt) ?? [])) };
    const found = answerOrNull(() => surfaceRoughness(part, surface));
    if (!found) return null;
    const { basis, value, sd, missing } = found;
    return { basis, value, sd, missing };
  });
}

/** What a part's numbers are worked out from, in short: its tests, its record and those of the motors, instruments and plates. */
function madeFrom(book: Book, id: string): string {
  const own = <R extends { readonly id: string }>(records: readonly R[]) =>
    records.filter((record) => record.id === id);
  const none = { skirts: [], surfaces: [], gears: [], builds: [] };
  return fingerprint({ ...book, ...none, rotors: own(book.rotors), packs: own(book.packs) });
}

/** Tests of the motors that turned a rotor: with the current they tell its power. */
function behind(own: readonly Test[], of: (kind: BenchTest["kind"], id: string) => readonly Test[]): Test[] {
  const motors = own.flatMap(({ data }) =>
    (data.kind === "curve" || data.kind === "thrust") && data.motor ? [data.motor] : [],
  );
  return [...new Set(motors)].flatMap((motor) => of("motor", motor));
}

/**
 * What a book knows whose tests are left out.
 *
 * @param fits - of the whole book
 * @param isHere - whether all tests that a part's numbers can rest on are in the book: then they are worked out from these
 * @returns answers for {@link Book}'s `known`
 */
export function knownBy(fits: BookFits, isHere: (rig: Rig) => boolean): ReadonlyMap<string, unknown> {
  const known = new Map<string, unknown>();
  const put = <T, A>(of: ById<T>, name: keyof Rig, key: (id: string) => string, make: (fit: T) => A) => {
    for (const [id, fit] of Object.entries(of)) if (!isHere({ [name]: id })) known.set(key(id), make(fit));
  };
  for (const name of NAMES)
    for (const [id, counts] of Object.entries(fits.tests[name])) known.set(countsKey(name, id), counts);
  put(fits.rotors, "rotor", rotorKey, (fit): RotorBasis => ({ ...fit, fit: null, points: [], testIds: [] }));
  put(
    fits.propellers,
    "rotor",
    propellerKey,
    (fit): PropellerBasis => ({
      ...fit,
      points: [],
      testIds: [],
      motorTestIds: [],
    }),
  );
  put(fits.motors, "motor", motorKey, (fit): MotorBasis => ({ ...fit, fit: null, rows: [], testIds: [] }));
  const untold = { testIds: [], against: null, told: null, toldBy: [] };
  put(fits.surfaces, "surface", roughnessKey, (fit): SurfaceRoughness => ({ ...fit, ...untold }));
  put(fits.packs, "pack", packKey, (fit): PackBasis => ({ ...fit, fit: null, chemistry: null, testIds: [] }));
  return known;
}

/** What each kind of test that makes a fit makes it of. */
const FITTED = [
  { kind: "curve", name: "rotor", key: rotorKey },
  { kind: "thrust", name: "rotor", key: propellerKey },
  { kind: "motor", name: "motor", key: motorKey },
  { kind: "discharge", name: "pack", key: packKey },
] as const;

/**
 * The tests that the numbers of every rotor, motor and pack take, as far as a book knows them: what all tests come to and,
 * once that is known, the tests that make no fit, which are few: they say why.
 *
 * @param book - as far as its tests are read
 * @returns what to ask for
 */
export function testsOfEveryPart(book: Book): TestsAsked[] {
  const { known } = book;
  if (!known) return [EVERY_FIT];
  const rigs = FITTED.flatMap(({ kind, name, key }) =>
    book[PARTS[name]].flatMap(({ id }): Rig[] =>
      known.has(key(id)) || !testCounts(book, name, id)[kind] ? [] : [{ [name]: id }],
    ),
  );
  const tests = book.tests.map(({ data }) => data);
  return [EVERY_FIT, ...testsOfRigs(rigs, tests)];
}
