import { describe, expect, it } from "vitest";
import { couponsOf, dimensionToChange } from "#shared/book/fitUp/advice.ts";
import { fitStacks } from "#shared/book/fitUp/fitStack.ts";
import { build as buildSchema } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const HEIGHT = {
  name: "Height under the cover",
  kind: "height",
  space: { name: "Cover, inside height", nominal: 0.032 },
  parts: [
    { name: "Motor", of: "motor.length" },
    { name: "Rotor", of: "rotor.height" },
    { name: "Air over the rotor", nominal: 0.001, basis: "free" },
  ],
};
const withStacks = (...stacks: object[]) => buildSchema.parse({ ...crawler, stacks });
const fitOf = (change: object = {}, stack: object = HEIGHT) =>
  fitStacks(book, { ...withStacks(stack), ...change })[0];

describe("fitStacks", () => {
  it("takes the sizes of the build's parts from their records", () => {
    const { stack, lines } = fitOf();
    expect(lines.map(({ nominal }) => nominal)).toEqual([0.032, 0.018, 0.012, 0.001]);
    expect(stack?.clearance).toBeCloseTo(0.001, 12);
    expect(stack?.verdict).toBe("closes");
  });

  it("with another motor is another stack: 21 mm instead of 18 mm leave 3 mm less", () => {
    expect(fitOf({ motor: "bell-22" }).stack?.clearance).toBeCloseTo(-0.002, 12);
  });

  it("of a cover lower than motor, rotor and the room that must stay together will not close", () => {
    const low = { ...HEIGHT, space: { ...HEIGHT.space, nominal: 0.03 } };
    const { stack } = fitOf({}, low);
    expect(stack?.clearance).toBeCloseTo(-0.001, 12);
    expect(stack?.verdict).toBe("will-not-close");
  });

  it("says which record lacks a size, and gives no verdict", () => {
    const noPack = { ...HEIGHT, parts: [...HEIGHT.parts, { name: "Pack", of: "pack.height" }] };
    const { stack, problem } = fitOf({}, noPack);
    expect(stack).toBeNull();
    expect(problem).toBe("The record of the pack lacks a size (Pack: height).");
  });

  it("takes 0.2 mm as drawn, 0.05 mm measured, none of room that must stay, and no more than a part's size", () => {
    const shim = {
      ...HEIGHT,
      parts: [
        { name: "Motor", of: "motor.length", basis: "measured" },
        { name: "Shim", nominal: 0.1e-3 },
        ...HEIGHT.parts.slice(1),
      ],
    };
    expect(fitOf({}, shim).lines.map(({ tolerance }) => tolerance)).toEqual([
      0.2e-3, 0.05e-3, 0.1e-3, 0.2e-3, 0,
    ]);
  });

  it("names a part that is smaller than the tolerance typed for it", () => {
    const coarse = { ...HEIGHT, parts: [{ name: "Rotor", of: "rotor.height", tolerance: 0.02 }] };
    expect(fitOf({}, coarse).problem).toBe("“Rotor” has a tolerance larger than its size.");
  });
});

describe("advice on a stack", () => {
  const tight = { ...HEIGHT, space: { ...HEIGHT.space, nominal: 0.0312 } };

  it("makes the space larger by just what is short at worst", () => {
    const change = dimensionToChange(fitOf({}, tight));
    expect(change?.line.name).toBe("Cover, inside height");
    expect(change?.by).toBeCloseTo(0.4e-3, 9);
    expect(
      fitOf({}, { ...HEIGHT, space: { ...HEIGHT.space, nominal: change?.nominal } }).stack?.worstCase[0],
    ).toBe(0);
  });

  it("changes a part of its own where the space is a part of the book, and never one of the book", () => {
    const gap = {
      name: "Skirt",
      kind: "gap",
      space: { name: "Wheel", of: "gear.wheelRadius" },
      parts: [{ name: "Axle over the lip", nominal: 0.017 }],
    };
    expect(dimensionToChange(fitOf({ gear: "rubber-tyres" }, gap))?.line.name).toBe("Axle over the lip");
    const motorAlone = { ...tight, space: { name: "Case", of: "pack.height" }, parts: [HEIGHT.parts[0]] };
    expect(dimensionToChange(fitOf({}, motorAlone))).toBeNull();
  });

  it("names the drawn sizes of a stack that may not close as worth a coupon, none of one that closes", () => {
    const coupons = couponsOf(fitStacks(book, withStacks(tight)));
    expect(coupons.map(({ line }) => line.name)).toEqual(["Cover, inside height"]);
    expect(coupons[0].share).toBeCloseToRelative(1 / 3, 1e-9);
    expect(couponsOf(fitStacks(book, withStacks(HEIGHT)))).toEqual([]);
  });
});
