import { describe, expect, it } from "vitest";
import { fitFriction } from "#shared/fit/frictionFit.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const degrees = (angle: number | null) => (angle === null ? null : (angle * Math.PI) / 180);
const slide = (held: number | null, slid: number | null) => ({ held: degrees(held), slid: degrees(slid) });

describe("fitFriction, on tilts read at the moment of sliding", () => {
  const angles = [34, 36, 35, 37.5, 33.5];
  const fit = fitFriction({ slides: angles.map((angle) => slide(null, angle)) });

  // μ = tan θ; the profile interval of exact readings in closed form, half-width s·√(e^(3.841/n) − 1).
  it("gives the mean tangent and its uncertainty", () => {
    const tangents = angles.map((angle) => Math.tan((angle * Math.PI) / 180));
    const mean = tangents.reduce((sum, x) => sum + x, 0) / 5;
    const sd = Math.sqrt(tangents.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 5);
    expect(fit.mu).toBeCloseToRelative(mean, 1e-9);
    expect(fit.sd).toBeCloseToRelative(sd, 1e-9);
    expect(fit.uncertainty).toBeCloseToRelative((sd * Math.sqrt(Math.expm1(3.841 / 5))) / 1.96, 1e-3);
    expect(fit.warnings).toEqual([]);
  });

  it("adds the tilt's own uncertainty through the slope of the tangent", () => {
    const tilt = 0.01;
    const more = fitFriction({ slides: angles.map((angle) => slide(null, angle)), angleUncertainty: tilt });
    const slope = 1 + fit.mu ** 2;
    expect(more.uncertainty).toBeCloseToRelative(Math.hypot(fit.uncertainty ?? 0, slope * tilt), 1e-9);
  });
});

describe("fitFriction, on brackets", () => {
  it("that share a value gives its middle, and half of it over √3", () => {
    const fit = fitFriction({ slides: [slide(34, 36), slide(35, 37), slide(34, 37)] });
    const [low, high] = [35, 36].map((angle) => Math.tan((angle * Math.PI) / 180));
    expect(fit.mu).toBeCloseToRelative((low + high) / 2, 1e-12);
    expect(fit.uncertainty).toBeCloseToRelative((high - low) / 2 / Math.sqrt(3), 1e-9);
    expect(fit.warnings.map((note) => note.code)).toContain("no-scatter-seen");
  });

  it("that scatter, with a run stopped early and one that slid at once, gives an answer", () => {
    const fit = fitFriction({
      slides: [slide(30, 32), slide(34, 36), slide(38, null), slide(0, 35), slide(32, 34)],
    });
    expect(fit.mu).toBeGreaterThan(Math.tan((30 * Math.PI) / 180));
    expect(fit.mu).toBeLessThan(Math.tan((40 * Math.PI) / 180));
    expect(fit.sd).toBeGreaterThan(0);
    expectAllFinite(fit);
  });

  it("one bracket answers, and asks for repeats", () => {
    const fit = fitFriction({ slides: [slide(34, 36)] });
    expect(fit.uncertainty).toBeGreaterThan(0);
    expect(fit.warnings.map((note) => note.code)).toEqual(["single-slide"]);
  });

  it("the same exact tilt each time has no uncertainty of its own but the tilt's", () => {
    const slides = [slide(null, 35), slide(null, 35)];
    expect(fitFriction({ slides }).uncertainty).toBeNull();
    expect(fitFriction({ slides, angleUncertainty: 0.01 }).uncertainty).toBeCloseToRelative(
      0.01 / Math.cos((35 * Math.PI) / 180) ** 2,
      1e-9,
    );
  });
});

describe("fitFriction, on slides that can't answer", () => {
  it.each([
    ["nothing slid", [slide(30, null), slide(40, null)]],
    ["all slid at the first step", [slide(0, 5), slide(0, 6)]],
    ["no tilt read", [slide(null, null)]],
    ["no slide", []],
  ])("%s: refused, with what to measure", (_, slides) => {
    expect(() => fitFriction({ slides })).toThrow(NotEnoughDataError);
    expect(() => fitFriction({ slides })).toThrow(/Tilt further|Begin flatter/);
  });
  it("held steeper than slid is refused by the slide", () => {
    expectOutOfRange(() => fitFriction({ slides: [slide(30, 35), slide(36, 34)] }), "slides.1.held");
  });
  it.each([90, -1, Number.NaN])("a tilt of %s° is refused", (angle) => {
    expectOutOfRange(() => fitFriction({ slides: [slide(null, angle)] }), "slides.0.slid");
  });
});
