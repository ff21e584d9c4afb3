import { describe, expect, it } from "vitest";
import { withChanges } from "#client/state/handles.ts";
import { solve } from "#client/state/outcome.ts";
import { roseOf } from "#client/views/attitudes/rose.ts";
import { pictureOf } from "#client/views/match/picture.ts";
import { thrustPictureOf } from "#client/views/match/thrust/picture.ts";
import { thrustTable } from "#client/views/match/thrust/table.ts";
import { thrustSentence } from "#client/views/match/thrust/thrustWords.ts";
import { questionOf } from "#client/views/rundown/question.ts";
import { requiredSuction } from "#shared/physics/hold/holdAt.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectAllFinite } from "#tests/support/finite.ts";

const book = demoBook();
const scout = book.builds.find(({ id }) => id === "prop-scout")?.data;
if (!scout) throw new Error("The demo has no propeller's build.");
const outcome = solve(book, scout);
const picture = thrustPictureOf(book, outcome);
if (!picture) throw new Error("no picture");

describe("the picture of a build that a propeller presses on", () => {
  it("has its three charges on the thrust curve, by rising speed, the charge shown where it was predicted", () => {
    const at = Object.fromEntries(picture.marks.map((mark) => [mark.key, mark]));
    expect(at.cutOff.speed).toBeLessThan(at.rest.speed);
    expect(at.rest.speed).toBeLessThan(at.full.speed);
    expect(at.rest.thrust).toBeCloseToRelative(outcome.prediction?.suction ?? 0, 1e-9);
    for (const mark of picture.marks) {
      const after = picture.curve.findIndex((point) => point.speed >= mark.speed);
      const [a, b] = [picture.curve[after - 1], picture.curve[after]];
      const share = (mark.speed - a.speed) / (b.speed - a.speed);
      expect(mark.thrust).toBeCloseToRelative(a.thrust + share * (b.thrust - a.thrust), 2e-3);
    }
  });

  it("has the force that each attitude needs, whatever the thrust", () => {
    const wall = picture.levels.find((level) => level.angle === 90);
    const vehicle = outcome.resolved?.propeller?.vehicle;
    expect(wall?.pressure).toBe(vehicle && requiredSuction(vehicle, 90).parked);
    const weak = thrustPictureOf(book, solve(book, { ...scout, charge: 0.1 }));
    expect(weak?.levels.map((level) => level.pressure)).toEqual(
      picture.levels.map((level) => level.pressure),
    );
  });

  it("has a reading of the build's own size and air where it was read", () => {
    const reading = picture.measured.find((point) => point.read.includes("127"));
    const grams = Number(/([\d.]+)\u202fg/.exec(reading?.read ?? "")?.[1]);
    expect(reading?.pressure).toBeCloseToRelative((grams / 1000) * 9.80665, 0.01);
  });

  it("in its table and its sentence: finite numbers, the pull in grams", () => {
    expectAllFinite(thrustTable(picture).rows);
    expect(thrustSentence(outcome)).toMatch(/presses with \d+.g\./);
  });

  it("has no fan curve, nor has a ducted build a thrust curve", () => {
    expect(pictureOf(book, outcome)).toBeNull();
    const pane = book.builds.find(({ id }) => id === "pane-crawler");
    expect(pane && thrustPictureOf(book, solve(book, pane.data))).toBeNull();
  });

  it.each([
    ["diameter", 0.1],
    ["series", 3],
    ["charge", 0.05],
    ["duty", 0.02],
    ["gap", 0.001],
    ["mass", 1],
    ["wheelFriction", 0],
    ["temperature", 260],
    ["pressure", 60e3],
  ] as const)("with %s tried at %f: is drawn in finite numbers, or says why not", (key, value) => {
    const tried = solve(book, withChanges(scout, { [key]: value }));
    if (!tried.prediction) return expect(tried.problem).toMatch(/\S/);
    const drawn = thrustPictureOf(book, tried);
    if (!drawn) return expect.fail("no picture");
    expectAllFinite([drawn.curve, drawn.marks, drawn.levels, drawn.mostForce, drawn.mostSpeed]);
    expectAllFinite(thrustTable(drawn).rows);
  });
});

describe("the other views of a propeller's build", () => {
  it("Attitudes: a rose of its thrust, without a band for a gap", () => {
    const rose = roseOf(outcome);
    expect(rose?.made).toBe(outcome.prediction?.suction);
    expect(rose?.spread).toBeNull();
  });

  it("Run-down: asks for a run of the propeller, without a skirt", () => {
    const question = questionOf(book, outcome, { startCharge: 1, targetMargin: 1.5 });
    expect(question?.input.rotor).toMatchObject({ kind: "propeller" });
    expect(question?.input.skirt).toBeUndefined();
  });
});
