import type { Build } from "../model/build.ts";
import type { BenchTest } from "../model/tests/index.ts";
import type { Book } from "./book.ts";
import { withPlate } from "./newestFirst.ts";

/** What a build's numbers can rest on. */
interface Matters {
  readonly rotors: ReadonlySet<string>;
  readonly motors: ReadonlySet<string>;
  readonly packs: ReadonlySet<string>;
  /** the build's own, and those that were leak-tested on its surface: roughness is told by what each does on a smoother one */
  readonly skirts: ReadonlySet<string>;
}

type Names = readonly (string | null | undefined)[];

const known = (names: Names): Set<string> => new Set(names.flatMap((name) => name ?? []));

/** Pulls of the skirt on the surface calibrate it, whatever rig they were taken with. */
function isOnPair(data: BenchTest, { skirt, surface }: Build): boolean {
  return data.kind === "pull" && data.skirt === skirt && data.surface === surface;
}

/** The build's parts, those of the rigs that calibrate it, and the motors whose current gave a rotor's power. */
function mattersTo(build: Build, tests: readonly BenchTest[]): Matters {
  const rigs = [
    build,
    ...tests.flatMap((data) => (data.kind === "pull" && isOnPair(data, build) ? [data] : [])),
  ];
  const rotors = known(rigs.map(({ rotor }) => rotor));
  const ofCurves = tests.flatMap((data) =>
    (data.kind === "curve" || data.kind === "thrust") && rotors.has(data.rotor) ? [data.motor] : [],
  );
  const leaky = tests.flatMap((data) =>
    data.kind === "leak" && data.surface === build.surface ? [data.skirt] : [],
  );
  return {
    rotors,
    motors: known([...rigs.map(({ motor }) => motor), ...ofCurves]),
    packs: known(rigs.map(({ pack }) => pack)),
    skirts: known([build.skirt, ...leaky]),
  };
}

function counts(data: BenchTest, build: Build, { rotors, motors, packs, skirts }: Matters): boolean {
  switch (data.kind) {
    case "curve":
    case "thrust":
      return rotors.has(data.rotor);
    case "motor":
      return motors.has(data.motor);
    case "discharge":
      return packs.has(data.pack);
    case "leak":
      return skirts.has(data.skirt);
    case "pull":
      return isOnPair(data, build);
    case "friction":
      return data.surface === build.surface;
    case "ride-height":
      return data.gear === build.gear;
    case "weigh-in":
    case "run-log":
      return false;
  }
}

/**
 * The part of a book that a build's numbers and uncertainties can rest on: a book of thousands of tests becomes light to hand on.
 *
 *     tests of its rotor, motor, pack and surface; pulls of its skirt there with all that their rigs rest on; leak tests that tell its skirt's leak or the surface's roughness
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns a book without builds, in the same order, that answers every question about that build as the whole one does
 *
 * Valid for the build itself, not for another on the same parts. Source: what {@link resolveBuild} and {@link buildUncertainty} read
 */
export function bookOfBuild(book: Book, build: Build): Book {
  const matters = mattersTo(
    build,
    book.tests.map(({ data }) => data),
  );
  // The newest plate of the book is what a next test would be made with, whose tests ever it stands in.
  const plate = withPlate(book.tests)[0]?.id;
  const { rotors, motors, packs } = matters;
  return {
    ...book,
    rotors: book.rotors.filter(({ id }) => rotors.has(id)),
    motors: book.motors.filter(({ id }) => motors.has(id)),
    packs: book.packs.filter(({ id }) => packs.has(id)),
    tests: book.tests.filter(({ id, data }) => id === plate || counts(data, build, matters)),
    builds: [],
  };
}

/**
 * The part of a book that the numbers of several builds can rest on.
 *
 *     what {@link bookOfBuild} keeps for any of them, in the book's order
 *
 * @param book - the whole bench book
 * @param builds - each answered as by the whole book
 * @returns a book without builds
 */
export function bookOfBuilds(book: Book, builds: readonly Build[]): Book {
  const each = builds.map((build) => bookOfBuild(book, build));
  const union = <C extends "rotors" | "motors" | "packs" | "tests">(name: C): Book[C] => {
    const kept = new Set(each.flatMap((part) => part[name].map(({ id }) => id)));
    const records: readonly { readonly id: string }[] = book[name];
    return records.filter(({ id }) => kept.has(id)) as unknown as Book[C];
  };
  return {
    ...book,
    rotors: union("rotors"),
    motors: union("motors"),
    packs: union("packs"),
    tests: union("tests"),
    builds: [],
  };
}
