import { describe, expect, it } from "vitest";
import { FAMILIES, MOTORS } from "#seed-data/truth.ts";
import { testsOf } from "#shared/book/book.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import type { Build } from "#shared/model/build.ts";
import { TEST_KINDS } from "#shared/model/testKinds.ts";
import { predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** The demo is invented: these are checks of its own consistency, no validation of the method. */
const book = demoBook();

function buildOf(id: string): Build {
  const stored = book.builds.find((record) => record.id === id);
  if (!stored) throw new Error(`no build ${id}`);
  return stored.data;
}

function answer(build: Build) {
  const { input, missing } = resolveBuild(book, build);
  if (!input) throw new Error(missing.map((part) => part.message).join(" "));
  const { attitudes, worst } = predict(input, [90, 180]);
  return {
    wall: attitudes[0].parked.margin ?? 0,
    ceiling: attitudes[1].parked.margin ?? 0,
    worst: worst.parked.margin ?? 0,
  };
}

const withGap = (build: Build, gap: number): Build => ({ ...build, overrides: { ...build.overrides, gap } });

describe("the demo, as a bench book", () => {
  it("holds what a first look needs: families in two sizes or more, motors, packs, skirts, surfaces, tests of every kind", () => {
    expect(book.rotors.length).toBeGreaterThanOrEqual(3);
    for (const rotor of book.rotors) expect(rotor.data.sizes.length).toBeGreaterThanOrEqual(2);
    expect([book.motors.length, book.packs.length, book.skirts.length, book.surfaces.length]).toEqual([
      4, 3, 3, 3,
    ]);
    expect(book.tests.length).toBeGreaterThanOrEqual(25);
    for (const kind of TEST_KINDS) expect(testsOf(book, kind).length).toBeGreaterThan(1);
    for (const record of [...book.rotors, ...book.motors, ...book.tests])
      expect(record.data.note).toMatch(/invented/i);
  });

  it("has a build that holds the wall comfortably, one that holds the ceiling but not the worst overhang, one that falls", () => {
    const pane = answer(buildOf("pane-crawler"));
    expect(pane.wall).toBeGreaterThan(1.5);
    expect(pane.worst).toBeGreaterThan(1.5);
    const roof = answer(buildOf("roof-crawler"));
    expect(roof.ceiling).toBeGreaterThan(1);
    expect(roof.worst).toBeLessThan(1);
    expect(answer(buildOf("ridge-runner")).ceiling).toBeLessThan(1);
  });

  it("loses the wall when the gap is dragged from 0.3 to 1.2 mm", () => {
    const pane = buildOf("pane-crawler");
    expect(answer(withGap(pane, 0.0003)).wall).toBeGreaterThan(1.5);
    expect(answer(withGap(pane, 0.0012)).wall).toBeLessThan(1);
  });
});

describe("the fits, on the demo's noisy readings", () => {
  it("find the motor constants that the readings were made from, within the instruments' noise", () => {
    const { motor } = resolveBuild(book, buildOf("pane-crawler"));
    expect(motor?.basis).toBe("measured");
    expect(motor?.constants.kv ?? 0).toBeCloseToRelative(MOTORS["bell-18"].kv, 0.02);
  });

  it("find the rotor curve that the readings were made from, within 3 % of blocked pressure", () => {
    const { rotor } = resolveBuild(book, buildOf("pane-crawler"));
    const truth = FAMILIES["swept-nine"].psi;
    const at = (psi: readonly number[], phi: number) =>
      psi.reduce((sum, c, power) => sum + c * phi ** power, 0);
    for (const phi of [0, 0.03, 0.06, 0.09, 0.12]) {
      expect(Math.abs(at(rotor?.psi ?? [], phi) - at(truth, phi))).toBeLessThan(0.03 * truth[0]);
    }
  });
});
