import type { Build } from "../../model/build.ts";
import type { TestKind } from "../../model/tests/index.ts";
import { rowContradictions } from "../../model/tests/rowContradictions.ts";
import { type Book, findById, testsOf } from "../book.ts";
import { calibrationOf, pullsOfPair } from "../calibration.ts";
import { testedFriction } from "../frictionBasis.ts";
import { gapBasis } from "../gapBasis.ts";
import { testedLeak } from "../leakBasis.ts";
import { motorAnswer } from "../motorBasis.ts";
import { packBasis } from "../packBasis.ts";
import { propellerBasis } from "../propellerBasis.ts";
import { inUse } from "../readings/reading.ts";
import { rotorBasis } from "../rotorBasis.ts";
import { testedGear } from "../stiffnessBasis.ts";

/** A test of a build's parts that its figures don't rest on, or some rows of it; none of them was set aside by hand. */
export interface LeftOut {
  readonly id: string;
  readonly kind: TestKind;
  readonly title: string;
  readonly date: string;
  /** counted from 0; empty where it is the whole test */
  readonly rows: readonly number[];
  readonly why: string;
}

/** What is left out and why, before it is named. */
interface Reason {
  readonly testIds: readonly string[];
  readonly rows?: readonly number[];
  readonly why: string;
}

/** Parts whose tests are asked about. */
export interface AskedParts {
  readonly rotors: readonly string[];
  readonly motors: readonly string[];
  readonly packs: readonly string[];
  readonly skirts: readonly string[];
  readonly surface: string;
  readonly gear: string | null;
  /** of the build, by path */
  readonly uncertainty: Build["uncertainty"];
}

/** Notes of the motor's and the pack's basis that say why their tests aren't used. */
const UNUSED = /^(motor-not-identified|motor-friction-unknown|discharge-not-enough)$/;

function ofRotor(book: Book, id: string): Reason[] {
  const rotor = findById(book.rotors, id)?.data;
  if (!rotor) return [];
  const kind = rotor.kind === "propeller" ? "thrust" : "curve";
  const answer = kind === "thrust" ? propellerBasis(book, id) : rotorBasis(book, id);
  const testIds = testsOf(book, kind).flatMap((test) => (test.data.rotor === id ? [test.id] : []));
  return answer.basis === "missing" ? [{ testIds, why: answer.missing.message }] : [];
}

const NO_FULL_THROTTLE =
  "no row was read at full throttle: below it the current in the lead is not the motor's";

function ofMotor(book: Book, id: string): Reason[] {
  const answer = motorAnswer(book, id);
  if (!answer || answer.testIds.length === 0) return [];
  const notes = answer.notes.filter(({ code }) => UNUSED.test(code)).map(({ message }) => message);
  const used = inUse(answer.rows);
  const throttled = used.length > 0 && used.every(({ throttle }) => throttle < 1);
  const why = throttled ? [NO_FULL_THROTTLE] : notes;
  return why.map((each) => ({ testIds: answer.testIds, why: each }));
}

function ofPack(book: Book, id: string): Reason[] {
  const answer = packBasis(book, id);
  if (!answer) return [];
  const testIds = testsOf(book, "discharge").flatMap((test) => (test.data.pack === id ? [test.id] : []));
  const notes = "notes" in answer ? answer.notes.map(({ code, message }) => ({ code, message })) : [];
  const why =
    answer.basis === "missing"
      ? [answer.missing.message]
      : notes.filter(({ code }) => UNUSED.test(code)).map(({ message }) => message);
  return why.map((each) => ({ testIds, why: each }));
}

function ofFriction(book: Book, { surface, skirts }: AskedParts): Reason[] {
  const tested = [
    testedFriction(book, surface, "wheels", null),
    ...skirts.map((skirt) => testedFriction(book, surface, "skirt", skirt)),
  ];
  return tested.flatMap(({ testIds, why }) => (why === null ? [] : [{ testIds, why }]));
}

function ofGear(book: Book, { gear }: AskedParts): Reason[] {
  const { testIds, why } = gear ? testedGear(book, gear) : { testIds: [], why: null };
  return why === null ? [] : [{ testIds, why }];
}

const NO_RIG = "the book doesn't know its rotor, motor or pack well enough to say what pull it should make";
const ONE_PULL = "one pull alone doesn't tell the gap. Repeat it";

function ofPulls(book: Book, skirt: string, { surface, uncertainty }: AskedParts): Reason[] {
  const { used, unknown, enough } = pullsOfPair(book, skirt, surface);
  const noRig = unknown.map(({ testId, row }) => ({ testIds: [testId], rows: [row], why: NO_RIG }));
  if (!enough)
    return [...noRig, ...used.map(({ testId, row }) => ({ testIds: [testId], rows: [row], why: ONE_PULL }))];
  const calibration = calibrationOf(book, { skirt, surface, uncertainty });
  if (!calibration || calibration.answer !== null || calibration.why === null) return noRig;
  return [{ testIds: calibration.testIds, why: calibration.why }, ...noRig];
}

function ofLeak(book: Book, skirtId: string, { surface, uncertainty }: AskedParts): Reason[] {
  const skirt = findById(book.skirts, skirtId);
  if (!skirt) return [];
  const calibration = calibrationOf(book, { skirt: skirtId, surface, uncertainty });
  const gap = gapBasis({ uncertainty, overrides: {} }, skirt, calibration);
  const { testIds, why } = testedLeak(book, skirtId, surface, gap);
  return why === null ? [] : [{ testIds, why }];
}

/** Rows that contradict themselves, of the tests that these parts are based on. */
function contradictions(book: Book, { skirts, surface }: AskedParts): Reason[] {
  const asked = book.tests.filter(({ data }) => {
    if (data.kind === "pull") return data.surface === surface && skirts.includes(data.skirt);
    return data.kind === "friction" && data.surface === surface;
  });
  return asked.flatMap(({ id, data }) =>
    rowContradictions(data).map(({ row, what }) => ({ testIds: [id], rows: [row], why: what })),
  );
}

function named(book: Book, reasons: readonly Reason[]): LeftOut[] {
  const found = new Map<string, LeftOut>();
  for (const { testIds, rows = [], why } of reasons)
    for (const id of testIds) {
      const test = findById(book.tests, id);
      if (!test) continue;
      const { kind, title, date } = test.data;
      const key = `${id} ${why}`;
      const before = found.get(key)?.rows ?? [];
      found.set(key, { id, kind, title, date, rows: [...before, ...rows], why });
    }
  return [...found.values()];
}

/** @returns tests of some parts that no figure rests on, and why */
export function leftOutOf(book: Book, asked: AskedParts): LeftOut[] {
  return named(book, [
    ...contradictions(book, asked),
    ...asked.skirts.flatMap((id) => [...ofPulls(book, id, asked), ...ofLeak(book, id, asked)]),
    ...ofFriction(book, asked),
    ...ofGear(book, asked),
    ...asked.rotors.flatMap((id) => ofRotor(book, id)),
    ...asked.motors.flatMap((id) => ofMotor(book, id)),
    ...asked.packs.flatMap((id) => ofPack(book, id)),
  ]);
}

/**
 * Tests of a build's parts that its figures don't rest on, and why: rows that contradict themselves, tests too few to tell
 * anything, pulls whose rig the book doesn't know. What was set aside by hand is not among them.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if settings
 * @returns each test with the rows and the reason, contradictions first
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function testsLeftOut(
  book: Book,
  build: Pick<Build, "rotor" | "motor" | "pack" | "skirt" | "surface" | "gear" | "uncertainty">,
): LeftOut[] {
  const { rotor, motor, pack, skirt, surface, gear, uncertainty } = build;
  const parts = { rotors: [rotor], motors: [motor], packs: [pack], skirts: skirt === null ? [] : [skirt] };
  return leftOutOf(book, { ...parts, surface, gear: gear ?? null, uncertainty });
}
