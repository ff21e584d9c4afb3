import { describe, expect, it } from "vitest";
import { MOTORS } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import { motorAnswer, motorBasis } from "#shared/book/motorBasis.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { type Motor, motor as motorSchema } from "#shared/model/parts/motor.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const ID = "bell-18";
const UNKNOWN = { kv: undefined, resistance: undefined, noLoadCurrent: undefined };

/** The demo's book with one motor's figures changed, and its motor tests kept as given. */
function withMotor(
  change: Partial<Motor>,
  keepTest: (rows: number) => boolean = () => true,
  free = true,
): Book {
  const demo = demoBook();
  return {
    ...demo,
    motors: demo.motors.map((each) =>
      each.id === ID ? { ...each, data: { ...each.data, ...change } } : each,
    ),
    tests: demo.tests.flatMap((test) => {
      const { data } = test;
      if (data.kind !== "motor" || data.motor !== ID) return [test];
      if (!keepTest(data.rows.length)) return [];
      return [{ ...test, data: { ...data, rows: data.rows.filter((row) => free || !row.noLoad) } }];
    }),
  };
}

const missingOf = (book: Book) => {
  const answer = motorAnswer(book, ID);
  return answer?.basis === "missing" ? answer.missing : null;
};

const paneCrawler = (book: Book) => {
  const build = book.builds.find(({ id }) => id === "pane-crawler");
  if (!build) throw new Error("no build");
  return resolveBuild(book, build.data);
};

describe("a motor of which nothing is stated", () => {
  it("is taken by the model, with its name alone", () => {
    expect(motorSchema.parse({ name: "Can from a drawer" })).toMatchObject({ viscousTorque: 0 });
  });

  it("with a test, free and loaded: has all its constants from it, near the demo's invented truth", () => {
    const basis = motorBasis(withMotor(UNKNOWN), ID);
    expect(basis?.basis).toBe("measured");
    expect(basis?.constants).toEqual(motorBasis(demoBook(), ID)?.constants);
    expect(basis?.constants.kv).toBeCloseToRelative(MOTORS[ID].kv, 0.02);
    expect(solvable(paneCrawler(withMotor(UNKNOWN)))).not.toBeNull();
  });

  it("without a test: says what isn't known and which test gives it, once, and the build has no numbers", () => {
    const book = withMotor(UNKNOWN, () => false);
    expect(motorBasis(book, ID)).toBeNull();
    expect(missingOf(book)).toMatchObject({ path: "motor", test: "motor" });
    expect(missingOf(book)?.message).toMatch(
      /^The speed constant, resistance and no-load current of .* are not known/,
    );
    const { missing, motor } = paneCrawler(book);
    expect(motor).toBeNull();
    expect(missing.filter(({ test }) => test === "motor")).toHaveLength(1);
    expect(missing.some(({ message }) => /name the motor/.test(message))).toBe(false);
  });

  it("with a test that has no row without load: says that the friction is what lacks", () => {
    expect(missingOf(withMotor(UNKNOWN, () => true, false))?.message).toMatch(/no row without load/);
  });
});

describe("a motor of which the maker states a part", () => {
  it("its resistance alone not known, without a test: names that one", () => {
    const book = withMotor({ resistance: undefined }, () => false);
    expect(missingOf(book)?.message).toMatch(/^The resistance of .* is not known: .*state it on/);
  });

  it("its no-load current, with a test under load alone: gives the friction, k·I₀", () => {
    const book = withMotor({ kv: undefined, resistance: undefined, noLoadCurrent: 0.4 }, () => true, false);
    const basis = motorBasis(book, ID);
    const k = 60 / (2 * Math.PI * (basis?.constants.kv ?? 0));
    expect(basis?.constants.frictionTorque).toBeCloseToRelative(k * 0.4, 1e-12);
  });
});
