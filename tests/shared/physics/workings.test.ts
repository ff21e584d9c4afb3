import { describe, expect, it } from "vitest";
import { resolveBuild } from "#shared/book/resolve.ts";
import { predict } from "#shared/physics/predict.ts";
import { predictPropeller } from "#shared/physics/propeller.ts";
import { propellerWorkings } from "#shared/physics/propellerWorkings.ts";
import { workingsOf } from "#shared/physics/workings.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

describe("workings, of every build of the demo", () => {
  it.each(book.builds.filter(({ data }) => data.skirt !== null).map((build) => [build.id, build] as const))(
    "%s: each result is the prediction's own figure",
    (_id, build) => {
      const { input } = resolveBuild(book, build.data);
      if (!input) return expect.fail("no input");
      const prediction = predict(input, [90, 180]);
      const { point } = prediction;
      if (!point) return expect.fail("no point");
      const workings = workingsOf(input, prediction, [90, 180]);
      const result = (symbol: string) => workings.findLast((w) => w.result.symbol === symbol)?.result.value;
      const [air, pressure, flow, pull] = ["ρ", "Δp", "Q", "F"].map(result);
      const [current = 0, torque = 0] = ["I", "M"].map(result);
      const titled = (title: string) => workings.find((w) => w.title === title)?.result.value;
      expect(air).toBe(prediction.air.density);
      expect(pressure).toBeCloseToRelative(point.pressure, 1e-12);
      expect(flow).toBeCloseToRelative(point.flow, 1e-9);
      expect(current).toBeCloseToRelative(point.motorCurrent, 1e-9);
      expect(torque * point.speed).toBeCloseToRelative(point.shaftPower, 1e-8);
      expect(pull).toBe(prediction.suction);
      expect(titled("margin at 90°, driving")).toBe(prediction.attitudes[0].driving.margin);
      expect(titled("margin at 90°, parked")).toBe(prediction.attitudes[0].parked.margin);
      expect(result("ψ")).toBeCloseToRelative(point.psi, 1e-12);
    },
  );

  it("of the propeller's build: each result is the prediction's own figure", () => {
    const build = book.builds.find(({ id }) => id === "prop-scout");
    const input = build && resolveBuild(book, build.data).propeller;
    if (!input) return expect.fail("no input");
    const prediction = predictPropeller(input, [90, 180]);
    const { point } = prediction;
    if (!point) return expect.fail("no point");
    const [air, current, torque, reynolds, force, wall] = propellerWorkings(input, prediction, [90]).map(
      (w) => w.result.value,
    );
    expect(air).toBe(prediction.air.density);
    expect(current).toBeCloseToRelative(point.motorCurrent, 1e-9);
    expect(torque * point.speed).toBeCloseToRelative(point.shaftPower, 1e-8);
    expect(reynolds).toBeCloseToRelative(
      (air * 0.75 * point.speed * 0.5 * 0.127 * 0.12 * 0.127) / prediction.air.viscosity,
      1e-3,
    );
    expect(force).toBe(prediction.suction);
    expect(wall).toBe(prediction.attitudes[0].driving.margin);
  });
});
