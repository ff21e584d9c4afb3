import { describe, expect, it } from "vitest";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { bareMass } from "#shared/book/choose/bareMass.ts";
import { stackedParts } from "#shared/book/fitUp/fitStack.ts";
import { ledgerOf } from "#shared/book/mass/ledger.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const { mass: _typed, ...vehicle } = crawler.vehicle;
/** The crawler without a number for the whole: the sum counts. */
const summed: Build = { ...crawler, vehicle };

const line = (change: Partial<Build["ledger"][number]> = {}): Build["ledger"][number] => ({
  name: "Wheel",
  group: "drive",
  quantity: 4,
  mass: 0.03,
  basis: "weighed",
  alternatives: [],
  ...change,
});

describe("ledgerOf", () => {
  it("of the demo's crawler, has its parts as lines by themselves and its own lines, and says what is on none", () => {
    const { lines, sum, whole, mass, unaccounted } = ledgerOf(book, crawler);
    expect(lines.slice(0, 4).map(({ of }) => of)).toEqual(["rotor", "motor", "skirt", "pack"]);
    const motor = book.motors.find(({ id }) => id === crawler.motor)?.data;
    expect(lines[1]).toMatchObject({ name: motor?.name, mass: motor?.mass, group: "suction" });
    expect(lines).toHaveLength(4 + crawler.ledger.length);
    expect(whole).toEqual({ value: 0.56, uncertainty: 0.004 });
    expect(mass).toBe(whole);
    expect(sum.value).toBeLessThan(0.56);
    expect(unaccounted).toBeCloseTo(0.56 - sum.value, 12);
  });

  it("adds uncertainties by hand: four pieces share one error, an estimate counts 15 %", () => {
    const ledger = [
      line({ uncertainty: 0.001 }),
      line({ name: "Paint", group: "paint and filler", quantity: 1, mass: 0.02, basis: "estimated" }),
      line({ name: "Camera", group: "electronics", quantity: 1, mass: 0.05 }),
    ];
    const bare = ledgerOf(book, { ...summed, ledger: [] }).sum;
    const { sum } = ledgerOf(book, { ...summed, ledger });
    expect(sum.value - bare.value).toBeCloseTo(0.19, 12);
    // 4 × 1 g = 4 g and 15 % of 20 g = 3 g: √(16 + 9) = 5 g beside that of the parts.
    expect(Math.sqrt(sum.uncertainty ** 2 - bare.uncertainty ** 2)).toBeCloseToRelative(0.005, 1e-9);
  });

  it("carries a rotor's mass to another diameter with its cube, as an estimate", () => {
    const at = (diameter: number) => ledgerOf(book, { ...crawler, diameter }).lines[0];
    const sizes = book.rotors.find(({ id }) => id === crawler.rotor)?.data.sizes ?? [];
    const { diameter, mass = 0 } = sizes[0];
    expect(at(diameter)).toMatchObject({ mass, basis: "weighed" });
    const small = 0.9 * diameter;
    expect(at(small).mass).toBeCloseToRelative(mass * 0.9 ** 3, 1e-12);
    expect(at(small)).toMatchObject({ basis: "estimated" });
    expect(at(small).uncertainty).toBeCloseToRelative(0.15 * mass * (1 - 0.9 ** 3), 0.2);
  });

  it("counts a part that isn't weighed as nothing and names it", () => {
    const motors = book.motors.map((each) => {
      const { mass: _unknown, ...data } = each.data;
      return { ...each, data };
    });
    expect(ledgerOf({ ...book, motors }, crawler).lines[1]).toMatchObject({ mass: 0, basis: "missing" });
  });
});

describe("the mass of a build without a number for the whole", () => {
  it("is the sum everywhere: in the prediction, in what is uncertain, in a search", () => {
    const { sum } = ledgerOf(book, summed);
    const resolved = resolveBuild(book, summed);
    expect(solvable(resolved)?.vehicle.mass).toBe(sum.value);
    expect(buildUncertainty(book, summed, resolved).uncertainty["vehicle.mass"]).toBe(sum.uncertainty);
    const parts = ledgerOf(book, { ...summed, ledger: [] }).sum.value;
    expect(
      bareMass({ book, build: summed, housing: stackedParts(book, summed), unusable: [] }),
    ).toBeCloseToRelative(sum.value - parts, 1e-12);
  });

  it("follows another motor by that motor's mass", () => {
    const other = { ...summed, motor: "bell-22" };
    const massOf = (build: Build) => solvable(resolveBuild(book, build))?.vehicle.mass ?? 0;
    // The demo's motors weigh 31 and 19 g.
    expect(massOf(other) - massOf(summed)).toBeCloseTo(0.012, 12);
  });
});
