import { describe, expect, it } from "vitest";
import { PROPELLERS } from "#seed-data/propellers.ts";
import type { Book } from "#shared/book/book.ts";
import { cellVoltages } from "#shared/book/cellVoltages.ts";
import { inlined } from "#shared/book/named.ts";
import { propellerBasis, thrustPoints } from "#shared/book/propellerBasis.ts";
import { predictedPull } from "#shared/book/pullPrediction.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { propellerBand } from "#shared/fit/propellerBands.ts";
import { rotor as rotorSchema } from "#shared/model/parts/rotor.ts";
import { type PullTest, pullTest } from "#shared/model/tests/pull.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { MOTOR, type ThrustRowTexts, thrustBook, thrustTest, typed } from "#tests/support/thrustBook.ts";

const D = 0.127;
const G = 9.80665;
const C_T = 0.12;
const C_P = 0.055;
/** k = 60/(2πK_v), M_c = k·I₀ written out. */
const K = 60 / (2 * Math.PI * MOTOR.kv);
const M_C = K * MOTOR.noLoadCurrent;

/** What the instruments show of C_T and C_P, written out, in standard air of 1.2 kg/m³; drift per ln of the speed. */
function row(rpm: number, drift = 0): ThrustRowTexts[number] {
  const n = rpm / 60;
  const share = 1 + drift * Math.log(rpm / 10_000);
  const thrust = C_T * share * 1.2 * n ** 2 * D ** 4;
  const torque = (C_P * 1.2 * n ** 2 * D ** 5) / (2 * Math.PI);
  return { rpm, grams: (1000 * thrust) / G, amps: (torque + M_C) / K };
}
const SPEEDS = [6000, 8000, 10_000, 12_000, 14_000];
const rows = (drift = 0) => SPEEDS.map((rpm) => row(rpm, drift));

function fitOf(book: Book) {
  const basis = propellerBasis(book, "prop");
  if (basis.basis === "missing") throw new Error(basis.missing.message);
  return basis.fit;
}

const scoutOf = (book: Book) => resolveBuild(book, book.builds[0].data);

describe("thrust tests, logged in the book", () => {
  it("with the motor's current: recover the C_T and the C_P that the readings were made from", () => {
    const fit = fitOf(thrustBook({ tests: [thrustTest(rows())] }));
    expect(fit.thrust[0]).toBeCloseToRelative(C_T, 1e-9);
    expect(fit.power?.[0]).toBeCloseToRelative(C_P, 1e-9);
  });

  it("with a torque meter: take its word before the current's", () => {
    const measured = rows().map((each) => {
      const n = each.rpm / 60;
      return { ...each, amps: 1, torque: (0.07 * 1.2 * n ** 2 * D ** 5) / (2 * Math.PI) };
    });
    expect(fitOf(thrustBook({ tests: [thrustTest(measured)] })).power?.[0]).toBeCloseToRelative(0.07, 1e-9);
  });

  it("in newtons or grams, rpm or turns a second: the same coefficients", () => {
    const test = thrustTest(rows());
    const inOther = {
      ...test,
      rows: test.rows.map((each) => ({
        ...each,
        speed: typed(each.speed.value / 60, "rev/s"),
        thrust: typed((each.thrust.value * G) / 1000, "N"),
      })),
    };
    expect(fitOf(thrustBook({ tests: [inOther] })).thrust[0]).toBeCloseToRelative(C_T, 1e-9);
  });

  it("on a day whose air was read: take that day's density", () => {
    const air = { temperature: typed(40, "°C"), pressure: typed(900, "hPa"), humidity: typed(0, "%") };
    const warm = fitOf(thrustBook({ tests: [thrustTest(rows(), { air })] })).thrust[0];
    // dry air as an ideal gas: 90000/(287.05·313.15) = 1.00122 kg/m³
    expect(warm / C_T).toBeCloseToRelative(1.2 / 1.00122, 1e-3);
  });

  it("with a drift over five speeds: show it; all at one speed: none, and a note says so", () => {
    const drifting = fitOf(thrustBook({ tests: [thrustTest(rows(0.08))] }));
    expect(drifting.thrust[1]).toBeCloseToRelative(0.08 * C_T, 1e-6);
    const same = fitOf(thrustBook({ tests: [thrustTest([row(9000), row(9000), row(9010)])] }));
    expect(same.thrust[1]).toBe(0);
    expect(same.warnings.map((note) => note.code)).toContain("no-drift-seen");
  });

  it("of two sizes: the same coefficients, the chord in proportion", () => {
    const small = rows().map((each) => ({
      ...each,
      grams: each.grams * 0.5 ** 4,
      amps: ((each.amps ?? 0) - M_C / K) * 0.5 ** 5 + M_C / K,
    }));
    const tests = [thrustTest(rows()), thrustTest(small, { diameter: typed(63.5, "mm") })];
    const fit = fitOf(thrustBook({ tests, rotor: { chord: 0.015 } }));
    expect(fit.thrust[0]).toBeCloseToRelative(C_T, 1e-9);
    expect(fit.power?.[0]).toBeCloseToRelative(C_P, 1e-9);
    expect(fit.chord).toBeCloseToRelative(0.015, 1e-12);
    // Re goes with the size squared at one speed
    expect(fit.testedReynolds[1] / fit.testedReynolds[0]).toBeCloseToRelative((14 / 6) * 4, 1e-9);
  });

  it("with a row set aside: leave it out of the fit, keep it among the points", () => {
    const bad = { ...row(9000), grams: 5, setAside: "scale touched the frame" };
    const book = thrustBook({ tests: [thrustTest([...rows(), bad])] });
    expect(fitOf(book).thrust[0]).toBeCloseToRelative(C_T, 1e-9);
    expect(thrustPoints(book, "prop")).toHaveLength(SPEEDS.length + 1);
  });

  it("of the demo: give the invented truth back within the instruments' noise", () => {
    const answer = propellerBasis(demoBook(), "pusher-three");
    if (answer.basis === "missing") throw new Error(answer.missing.message);
    const truth = PROPELLERS["pusher-three"];
    const middle = answer.fit.referenceReynolds;
    const at = ([level, drift]: readonly number[]) =>
      level + drift * Math.log(middle / truth.referenceReynolds);
    expect(propellerBand(answer.fit, "thrust", middle)?.value).toBeCloseToRelative(at(truth.thrust), 0.015);
    expect(propellerBand(answer.fit, "power", middle)?.value).toBeCloseToRelative(at(truth.power), 0.04);
  });
});

describe("a build that a propeller presses on", () => {
  const tests = [thrustTest(rows())];

  it("without a skirt: resolves, holds by its thrust, runs down", () => {
    const book = thrustBook({ tests });
    const resolved = scoutOf(book);
    expect(resolved.missing).toEqual([]);
    expect(resolved.input).toBeNull();
    const input = solvable(resolved);
    if (!input || !resolved.propeller) throw new Error("not resolved");
    const { point, suction } = predictAny(input);
    const n = (point?.rpm ?? 0) / 60;
    const density = predictAny(input).air.density;
    expect(suction).toBeCloseToRelative(C_T * density * n ** 2 * D ** 4, 1e-9);
    expect(resolved.propeller.vehicle.skirtShare).toBe(0);
    const volts = cellVoltages({ charge: 1 }, resolved);
    expect(volts?.cutOff).toBeLessThan(volts?.full ?? 0);
    if (!resolved.pack) throw new Error("no pack");
    const pack = { series: 2, parallel: 1, wireResistance: 0, cell: resolved.pack.cell };
    const run = runDown({ ...resolved.propeller, pack, startCharge: 1 });
    expect(run.end.time).toBeGreaterThan(30);
  });

  it("with a skirt: carries the share of the load that rubs, and needs no gap", () => {
    const { propeller } = scoutOf(thrustBook({ tests, build: { skirt: "lip" } }));
    expect(propeller?.vehicle.skirtShare).toBe(0.2);
    expect(propeller?.vehicle.skirtFriction).toBe(0.3);
    expect(propeller && "skirt" in propeller).toBe(false);
  });

  it("in another size than tested: scaled from it, marked extrapolated beyond the tested Reynolds numbers", () => {
    const resolved = scoutOf(thrustBook({ tests, build: { diameter: 0.06 } }));
    expect(resolved.scaledFrom).toBe(D);
    const input = solvable(resolved);
    const prediction = input && predictAny(input);
    expect(prediction?.point?.extrapolated).toBe(true);
    expect(prediction?.warnings.map((note) => note.code)).toContain("extrapolated");
  });

  it("names its tests, and the motor's behind the shaft power", () => {
    const noLoad = {
      kind: "motor",
      date: "2026-05-01",
      motor: "stand-motor",
      rows: [{ voltage: typed(7, "V"), current: typed(0.5, "A"), speed: typed(16_000, "rpm"), noLoad: true }],
    };
    expect(scoutOf(thrustBook({ tests: [...tests, noLoad] })).tests).toEqual(
      expect.arrayContaining(["test-0", "test-1"]),
    );
  });
});

describe("a propeller's build that lacks something", () => {
  const plain = rows().map(({ amps: _, ...each }) => each);
  it.each([
    ["no thrust test", [], /No thrust test of Prop/, "thrust"],
    ["current read, no motor named", [thrustTest(rows(), { motor: null })], /name the motor/, "thrust"],
    ["motor named, no current", [thrustTest(plain)], /log the motor's current/, "thrust"],
    ["neither", [thrustTest(plain, { motor: null })], /name the motor and log its current/, "thrust"],
    [
      "current read at part throttle only",
      [
        thrustTest(rows(), {
          rows: thrustTest(rows()).rows.map((each) => ({ ...each, throttle: typed(60, "%") })),
        }),
      ],
      /at part throttle/,
      "thrust",
    ],
    [
      "current 0",
      [thrustTest(rows().map((each) => ({ ...each, amps: 0 })))],
      /no more than its motor/,
      "thrust",
    ],
    [
      "thrust negative",
      [thrustTest(rows().map((each) => ({ ...each, grams: -each.grams })))],
      /no thrust/,
      "thrust",
    ],
    [
      "every row set aside",
      [thrustTest(rows().map((each) => ({ ...each, setAside: "stand fell over" })))],
      /No thrust test/,
      "thrust",
    ],
  ])("%s: named, with the test that gives it", (_, tests, message, test) => {
    const resolved = scoutOf(thrustBook({ tests }));
    expect(solvable(resolved)).toBeNull();
    expect(resolved.missing.find((each) => message.test(each.message))?.test).toBe(test);
    expectAllFinite(resolved.missing);
  });

  it("one row: answers, the drift and the uncertainty said to be unknown", () => {
    const resolved = scoutOf(thrustBook({ tests: [thrustTest([row(9000)])] }));
    const input = solvable(resolved);
    if (!input) throw new Error("not resolved");
    expectAllFinite(predictAny(input));
    expect(resolved.thrust?.fit.warnings.map((note) => note.code)).toEqual(
      expect.arrayContaining(["no-residual", "no-drift-seen", "chord-assumed"]),
    );
  });

  it("a ducted rotor without a skirt: the skirt is named", () => {
    const book = thrustBook({ rotor: { kind: "ducted" } });
    const { missing } = scoutOf(book);
    expect(missing.find(({ path }) => path === "skirt")?.message).toMatch(/ducted rotor.*choose one/);
  });

  it("a rotor stored before there were kinds: is a ducted one", () => {
    expect(rotorSchema.parse({ name: "Old", sizes: [{ diameter: 0.04 }] }).kind).toBe("ducted");
  });
});

describe("a pull test of a propeller's vehicle", () => {
  it("straight off: is predicted to hold the thrust at the voltage read", () => {
    const book = thrustBook({ tests: [thrustTest(rows())] });
    const stored = pullTest.parse({
      kind: "pull",
      date: "2026-05-22",
      rotor: "prop",
      diameter: typed(127, "mm"),
      motor: "stand-motor",
      pack: "pack",
      skirt: "lip",
      surface: "pane",
      direction: "straight-off",
      rigMass: typed(0, "g"),
      rows: [{ held: typed(100, "g"), letGo: null, voltage: typed(7.4, "V") }],
    });
    const pull = inlined(book, stored) as PullTest;
    const { predicted } = predictedPull(book, pull, { voltage: 7.4, gap: null });
    const input = scoutOf(book).propeller;
    if (!input) throw new Error("not resolved");
    const stiff = { ...input.pack, openCircuitVoltage: 3.7, cellResistance: 0, wireResistance: 0 };
    const air = { temperature: 293.15, pressure: 101325, humidity: 0.5 };
    expect(predicted).toBeCloseToRelative(predictAny({ ...input, air, pack: stiff }).suction, 1e-9);
  });
});
