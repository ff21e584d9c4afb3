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
import { admittedMotors } from "./motors.ts";
import { admittedPacks } from "./packs.ts";
import { UnusablePartsError } from "./refusal.ts";
import { admittedRotors } from "./rotors.ts";
import { admittedSkirts } from "./skirts.ts";

/** A question to the engine, and what it takes for granted. */
export interface Question {
  readonly problem: Problem;
  readonly notes: readonly Note[];
  /** the book as it was when it was asked */
  readonly book: Book;
  /** gives vehicle, air, supply and surface */
  readonly base: Build;
}

function notesOf(context: Context): Note[] {
  if (skirtMass(context) !== null) return [];
  const message = `The skirt of ${context.build.name} isn't weighed, so every set is taken to carry its weight, whatever skirt it has.`;
  return [{ code: "skirt-not-weighed", message }];
}

function contextOf(book: Book, { build: id }: ChooseRequest): Context {
  const build = findById(book.builds, id)?.data;
  if (!build) throw new UnusablePartsError([{ path: "build", message: `The book has no build ${id}.` }]);
  return { book, build: { ...build, overrides: {} }, housing: stackedParts(book, build), unusable: [] };
}

/**
 * A question to the engine from the book's own parts.
 *
 *     every part as its tests say it; the vehicle's mass without the chosen parts, so that each set carries its own
 *
 * @param book - the whole bench book
 * @param request - what is admitted and what must hold, SI
 * @returns the question in plain numbers, with notes
 * @throws {UnusablePartsError} naming each admitted part that can't be solved with, and what it lacks
 * @throws {OutOfRangeError} on a range that can't be
 *
 * Valid for ducted rotors. Source: docs/method/choosing.md
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
  const lists = {
    motors: admittedMotors(context, request.motors),
    rotors: admittedRotors(context, request.rotors),
    packs: admittedPacks(context, request.packs),
    skirts: admittedSkirts(context, request.skirts),
  };
  if (context.unusable.length > 0) throw new UnusablePartsError(context.unusable);
  const stacks = housingOf(book, context.build);
  const fixed = { air, vehicle: { ...vehicle, mass }, supply: rest, charge, height: 0, price: 0, stacks };
  return {
    problem: { fixed, ...lists, duties: request.duties, wants: request.wants },
    notes: notesOf(context),
    book,
    base: context.build,
  };
}
