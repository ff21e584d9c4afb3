import type { Build } from "../model/build.ts";
import { type Book, findById } from "./book.ts";
import { type BuildWithMass, withMass } from "./mass/withMass.ts";
import { type Resolved, solvable } from "./resolve.ts";
import { atOnce, type Steps } from "./steps.ts";
import { type BuildUncertainty, Collector } from "./uncertainty/collector.ts";
import { addMotorUncertainty } from "./uncertainty/motorUncertainty.ts";
import { addPackUncertainty } from "./uncertainty/packUncertainty.ts";
import { pullResponseSteps } from "./uncertainty/pullResponse.ts";
import { addRotorUncertainty, addSizeLaw, addThrustUncertainty } from "./uncertainty/rotorUncertainty.ts";
import {
  addFactorUncertainty,
  addFrictionUncertainty,
  addGapUncertainty,
  addLipLaw,
  addSetAnew,
  addSkirtUncertainty,
  addStiffnessUncertainty,
} from "./uncertainty/skirtUncertainty.ts";
import { addGains, readPaths } from "./uncertainty/testedGains.ts";

export type { BuildUncertainty, UncertaintySource } from "./uncertainty/collector.ts";

const NOTHING: BuildUncertainty = {
  uncertainty: {},
  logNormal: {},
  correlated: [],
  joint: null,
  shared: [],
  followers: [],
  sources: {},
};

/** What the build states of a number stands before whatever parts and tests say of it. */
function addStated({ uncertainty, name }: Build, into: Collector): void {
  for (const [path, sd] of Object.entries(uncertainty)) {
    const what = path === "vehicle.mass" ? `mass of ${name}` : `${path} of ${name}`;
    into.add(path, sd, { from: "stated", what, test: null });
  }
}

/** A mass of which nothing is stated, as a kitchen scale weighs it: 1 g and 0.5 %. Common practice, no source: docs/method/uncertainty.md, What a build of the book is unsure of. */
const SCALE = { absolute: 1e-3, relative: 5e-3 };

function addScale({ vehicle, name }: BuildWithMass, into: Collector): void {
  const sd = Math.hypot(SCALE.absolute, SCALE.relative * vehicle.mass);
  const what = `mass of ${name}, as a kitchen scale weighs, 1\u202fg and 0.5\u202f%`;
  into.add("vehicle.mass", sd, { from: "default", what, test: "weigh-in" });
}

function addBlower(book: Book, build: Build, { rotor, thrust }: Resolved, into: Collector): void {
  const record = findById(book.rotors, build.rotor);
  if (!record) return;
  if (rotor) {
    addRotorUncertainty(book, record, rotor, into);
    addSizeLaw(record.data.name, into);
  }
  if (thrust) addThrustUncertainty(record.data.name, thrust, into);
}

/** What instruments share, and κ after the numbers that its pulls were predicted with. */
function* addShared(book: Book, build: Build, resolved: Resolved, into: Collector): Steps<void> {
  addSetAnew(resolved, into);
  const paths = new Set([...into.paths(), ...readPaths(resolved)]);
  const pulls = yield* pullResponseSteps(book, build, resolved, paths);
  addGains(book, resolved, pulls, into);
  if (!pulls) return;
  const by = Object.entries(pulls.by).map(([path, slope]) => [path, -pulls.told * slope]);
  into.addFollower("vehicle.pullFactor", Object.fromEntries(by));
}

/**
 * Gathers every uncertainty that a build's record, its parts and its tests state or leave, with where each comes from.
 *
 *     the build's own word first, then fits with their covariance, calibration, tilt tests, what the parts state; an estimated curve ±30 %
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @param resolved - its numbers, from {@link resolveBuild}
 * @returns standard uncertainties and covariances as {@link uncertaintyOf} takes them [unit of each number], sources by path; all empty where nothing is stated, or the build has no numbers
 *
 * Valid for tests independent of each other. Source: docs/method/uncertainty.md, Numbers that are uncertain together
 */
export function buildUncertainty(book: Book, build: Build, resolved: Resolved): BuildUncertainty {
  return atOnce(uncertaintySteps(book, build, resolved));
}

/** {@link buildUncertainty}, a costly part of it a step; what they found is kept with the book for whoever gathers it again. */
export function* uncertaintySteps(book: Book, build: Build, resolved: Resolved): Steps<BuildUncertainty> {
  const input = solvable(resolved);
  if (!input) return NOTHING;
  const into = new Collector(input, Object.keys(build.uncertainty));
  const motor = findById(book.motors, build.motor)?.data;
  const pack = findById(book.packs, build.pack)?.data;
  const skirt = (build.skirt && findById(book.skirts, build.skirt)?.data) || null;
  const surface = findById(book.surfaces, build.surface)?.data;
  const weighed = withMass(book, build);
  addStated(weighed, into);
  addScale(weighed, into);
  addBlower(book, build, resolved, into);
  yield;
  if (motor && resolved.motor) addMotorUncertainty(motor, resolved.motor, into);
  if (pack && resolved.pack) addPackUncertainty(pack, resolved.pack, build, into);
  if (surface) {
    addGapUncertainty(resolved, { skirt, surface }, into);
    addFactorUncertainty(resolved, { skirt, surface }, into);
    addFrictionUncertainty(resolved, { skirt, surface }, into);
  }
  const gear = findById(book.gears, build.gear)?.data.name ?? "the running gear";
  addStiffnessUncertainty(resolved, gear, into);
  if (skirt) {
    addSkirtUncertainty(skirt, into);
    addLipLaw(resolved, skirt.name, into);
  }
  if (resolved.input) yield* addShared(book, build, resolved, into);
  return into.result();
}
