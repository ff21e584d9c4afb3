import { type SampledUncertainty, sampledWithJoints } from "../decide/joints/sampled.ts";
import { type Concluded, concluded } from "../decide/verdict/concluded.ts";
import type { Crossing } from "../decide/verdict/findings.ts";
import { anglesOf, chanceOf, findingsOf } from "../decide/verdict/judge.ts";
import type { Build } from "../model/build.ts";
import type { TestKind } from "../model/tests/index.ts";
import { type AnyPrediction, predictAny } from "../physics/predictAny.ts";
import { type Book, findById } from "./book.ts";
import { type LeftOut, testsLeftOut } from "./leftOut/leftOut.ts";
import { type BuildMark, marksOf } from "./marks.ts";
import type { Resolved } from "./resolve/resolved.ts";
import { statesUncertainty, uncertaintyAsked } from "./uncertaintyAsked.ts";
import { verdictCase } from "./verdictCase.ts";

/** A test that the figures of a build are based on. */
export interface UsedTest {
  readonly id: string;
  readonly kind: TestKind;
  readonly title: string;
  readonly date: string;
}

/** All that the screen says of a build. */
export interface JudgedBuild extends Concluded {
  readonly prediction: AnyPrediction;
  /** over each joint of the surface, the least margin first */
  readonly crossings: readonly Crossing[];
  /** null where no uncertainty is stated */
  readonly doubt: SampledUncertainty | null;
  readonly marks: readonly BuildMark[];
  readonly restsOn: readonly UsedTest[];
  readonly leftOut: readonly LeftOut[];
}

function usedTests(book: Book, { tests }: Resolved): UsedTest[] {
  return [...new Set(tests)].flatMap((id) => {
    const test = findById(book.tests, id)?.data;
    return test ? [{ id, kind: test.kind, title: test.title, date: test.date }] : [];
  });
}

/** Each attitude once; the worst ones may be among the named. */
function sampled(asked: NonNullable<ReturnType<typeof uncertaintyAsked>>, samples: number) {
  const angles = [...new Set(asked.asked.angles)];
  return { ...asked.asked, angles, samples };
}

/**
 * Judges a build of the book: what the screen says of it, in one go.
 *
 * @param book - the whole bench book
 * @param build - a stored build
 * @param resolved - the same build made into numbers
 * @param samples - of its uncertainty [-]
 * @returns verdict with ways out, prediction, uncertainty, marks, tests it is based on and those left out; null where the build has no numbers yet
 * @throws {OutOfRangeError} {NotEnoughDataError} as the prediction
 */
export function judgedBuild(
  book: Book,
  build: Build,
  resolved: Resolved,
  samples: number,
): JudgedBuild | null {
  const of = verdictCase(book, build, resolved);
  if (!of) return null;
  const prediction = predictAny(of.build, anglesOf(of));
  const solved = { build, resolved, prediction };
  const question = uncertaintyAsked(book, solved);
  const asked = question && statesUncertainty(question) ? sampled(question, samples) : null;
  const doubt = asked && sampledWithJoints(of, asked);
  const findings = { ...findingsOf(of, prediction), chance: chanceOf(doubt, of.attitudes) };
  return {
    ...concluded(of, findings, asked),
    prediction,
    crossings: findings.crossings,
    doubt,
    marks: marksOf(book, solved),
    restsOn: usedTests(book, resolved),
    leftOut: testsLeftOut(book, build),
  };
}
