import type { BenchTest } from "../model/tests/index.ts";
import type { TestsAsked } from "./testsAsked.ts";

type Name = string | null | undefined;

/** Parts that stand together: a build's, or a rig's. What isn't said, or isn't there, is left out. */
export interface Rig {
  readonly rotor?: Name;
  readonly motor?: Name;
  readonly pack?: Name;
  readonly skirt?: Name;
  readonly surface?: Name;
  readonly gear?: Name;
}

const known = (names: readonly Name[]): Set<string> => new Set(names.flatMap((name) => name || []));

/** Pulls of the skirt on the surface calibrate it, whatever rig they were taken with. */
function isOnPair(data: BenchTest, { skirt, surface }: Rig): boolean {
  return data.kind === "pull" && data.skirt === skirt && data.surface === surface;
}

/** What the numbers of some rigs can rest on. */
export interface PartsAsked {
  /** their own, and those of the pulls that calibrate them */
  readonly rotors: ReadonlySet<string>;
  /** those, and the ones whose current gave a rotor's power */
  readonly motors: ReadonlySet<string>;
  readonly packs: ReadonlySet<string>;
  /** their own, and those that were leak-tested on their surfaces: roughness is told by what each does on a smoother one */
  readonly skirts: ReadonlySet<string>;
}

/** @returns the parts whose tests bear on some rigs, as far as the given tests say it */
export function partsAsked(rigs: readonly Rig[], tests: readonly BenchTest[]): PartsAsked {
  const pulls = tests.filter(
    (data): data is Extract<BenchTest, { kind: "pull" }> =>
      data.kind === "pull" && rigs.some((rig) => isOnPair(data, rig)),
  );
  const all: readonly Rig[] = [...rigs, ...pulls];
  const rotors = known(all.map(({ rotor }) => rotor));
  const surfaces = known(rigs.map(({ surface }) => surface));
  const ofCurves = tests.flatMap((data) =>
    (data.kind === "curve" || data.kind === "thrust") && rotors.has(data.rotor) ? [data.motor] : [],
  );
  const leaky = tests.flatMap((data) =>
    data.kind === "leak" && surfaces.has(data.surface) ? [data.skirt] : [],
  );
  return {
    rotors,
    motors: known([...all.map(({ motor }) => motor), ...ofCurves]),
    packs: known(all.map(({ pack }) => pack)),
    skirts: known([...rigs.map(({ skirt }) => skirt), ...leaky]),
  };
}

/**
 * The tests that the numbers of some rigs can rest on, as far as the given tests say it: once all that are asked for are
 * among the given ones, nothing more is.
 *
 *     tests of their rotors, motors, packs and surfaces; pulls of their skirts there with all that those rigs rest on; leak tests that tell their skirts' leak or the surfaces' roughness
 *
 * @param rigs - a build, several of them, or what a test is made with
 * @param tests - known so far
 * @returns what to ask a book for
 *
 * Source: what {@link resolveBuild} and {@link buildUncertainty} read
 */
export function testsOfRigs(rigs: readonly Rig[], tests: readonly BenchTest[]): TestsAsked[] {
  const { rotors, motors, packs, skirts } = partsAsked(rigs, tests);
  const surfaces = known(rigs.map(({ surface }) => surface));
  const pairs = new Map(
    rigs.flatMap(({ skirt, surface }) =>
      skirt && surface ? [[`${skirt} ${surface}`, { skirt, surface }] as const] : [],
    ),
  );
  return [
    ...[...rotors].flatMap((rotor): TestsAsked[] => [
      { kind: "curve", names: { rotor } },
      { kind: "thrust", names: { rotor } },
    ]),
    ...[...motors].map((motor): TestsAsked => ({ kind: "motor", names: { motor } })),
    ...[...packs].map((pack): TestsAsked => ({ kind: "discharge", names: { pack } })),
    ...[...skirts].map((skirt): TestsAsked => ({ kind: "leak", names: { skirt } })),
    ...[...surfaces].flatMap((surface): TestsAsked[] => [
      { kind: "leak", names: { surface } },
      { kind: "friction", names: { surface } },
    ]),
    ...[...pairs.values()].map((names): TestsAsked => ({ kind: "pull", names })),
    ...[...known(rigs.map(({ gear }) => gear))].map(
      (gear): TestsAsked => ({ kind: "ride-height", names: { gear } }),
    ),
  ];
}
