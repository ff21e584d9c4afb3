import type { Problem } from "../../decide/choose/problem.ts";
import type { ChooseRequest } from "../../model/api/choose.ts";
import type { Build } from "../../model/build.ts";
import type { Note } from "../../physics/note.ts";
import { type Book, findById } from "../book.ts";
import { stackedParts } from "../fitUp/fitStack.ts";
import { housingOf } from "../fitUp/stackedBy.ts";
import { withMass } from "../mass/withMass.ts";
import { stiffnessBasis } from "../stiffnessBasis.ts";
import { bareMass, skirtMass } from "./bareMass.ts";
import type { Context } from "./context.ts";
import { triedMotors } from "./motors.ts";
import { triedPacks } from "./packs.ts";
import { UnusablePartsError } from "./refusal.ts";
import { triedRotors } from "./rotors.ts";
import { triedSkirts, triedStands } from "./skirts.ts";

/** A question to the engine, and what it takes for granted. */
export interface Question {
  readonly problem: Problem;
  readonly notes: readonly Note[];
  /** the book as it was when it was asked */
  readonly book: Book;
  /** gives vehicle, air, supply and surface */
  readonly base: Build;
}

function notesOf(context: Context, { propellers = [] }: Problem): Note[] {
  const notes: Note[] = [];
  if (skirtMass(context) === null) {
    const message = `The skirt of ${context.build.name} isn't weighed, so every combination is taken to carry its weight, whatever skirt it has.`;
    notes.push({ code: "skirt-not-weighed", message });
  }
  if (propellers.length > 0) {
    const message =
      "The burst speed of an open propeller isn't worked out, so no combination with one is judged by it: keep to the speed that its maker allows. Its thrust is that of the open air, not beside a surface.";
    notes.push({ code: "propeller-strength", message });
  }
  return notes;
}

/** What can't be used is told once, whichever kind of combination it was asked for. */
function refuse({ unusable }: Context): void {
  const fields = unusable.filter(
    ({ path, message }, i) => unusable.findIndex((one) => one.path === path && one.message === message) === i,
  );
  if (fields.length > 0) throw new UnusablePartsError(fields);
}

function contextOf(book: Book, { build: id }: ChooseRequest): Context {
  const build = findById(book.builds, id)?.data;
  if (!build) throw new UnusablePartsError([{ path: "build", message: `The book has no build ${id}.` }]);
  return { book, build: { ...build, overrides: {} }, housing: stackedParts(book, build), unusable: [] };
}

/**
 * A question to the engine from the book's own parts.
 *
 *     every part as its tests say it; the vehicle's mass without the chosen parts, so that each combination carries its own
 *
 * @param book - the whole bench book
 * @param request - what is to be tried and what must hold, SI
 * @returns the question in plain numbers, with notes
 * @throws {UnusablePartsError} naming each part to try that can't be solved with, and what it lacks
 * @throws {OutOfRangeError} on a range that can't be
 *
 * Valid for rotors in a duct and open propellers. Source: docs/method/choosing.md
 */
export function chooseProblem(book: Book, request: ChooseRequest): Question {
  const context = contextOf(book, request);
  const { air, supply, charge } = context.build;
  const vehicle = {
    ...withMass(book, context.build).vehicle,
    verticalStiffness: stiffnessBasis(book, context.build).value,
  };
  const { duty: _each, ...rest } = supply;
  const mass = bareMass(context);
  const { rotors, propellers } = triedRotors(context, request.rotors);
  const kinds = request.rotors.map(({ rotor }) => findById(book.rotors, rotor)?.data.kind);
  const isOpen = (kind: (typeof kinds)[number]) => kind === "propeller";
  const lists = {
    motors: triedMotors(context, request.motors),
    rotors,
    packs: triedPacks(context, request.packs),
    skirts: kinds.every(isOpen) ? [] : triedSkirts(context, request.skirts),
    ...(kinds.some(isOpen) ? { propellers, stands: triedStands(context, request.skirts) } : {}),
  };
  refuse(context);
  const stacks = housingOf(book, context.build);
  const fixed = { air, vehicle: { ...vehicle, mass }, supply: rest, charge, height: 0, price: 0, stacks };
  const problem = { fixed, ...lists, duties: request.duties, wants: request.wants };
  return {
    problem,
    notes: notesOf(context, problem),
    book,
    base: context.build,
  };
}
