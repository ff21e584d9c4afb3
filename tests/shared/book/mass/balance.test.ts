import { describe, expect, it } from "vitest";
import { balanceOf } from "#shared/book/mass/balance.ts";
import { ledgerOf } from "#shared/book/mass/ledger.ts";
import { isPrinted, madeMass } from "#shared/book/mass/made.ts";
import { withMass } from "#shared/book/mass/withMass.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import type { Build } from "#shared/model/build.ts";
import { DENSITIES } from "#shared/model/densities.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const { mass: _typed, ...vehicle } = crawler.vehicle;
const at = (fromRear: number, height: number) => ({ fromRear, height });
const everyPart = {
  rotor: at(0.06, 0.02),
  motor: at(0.06, 0.035),
  pack: at(0.02, 0.03),
  skirt: at(0.06, 0.002),
};
const line = (name: string, mass: number, place?: { fromRear: number; height: number }) => ({
  name,
  group: "structure" as const,
  quantity: 2,
  mass,
  basis: "weighed" as const,
  alternatives: [],
  ...(place ? { place } : {}),
});
const build: Build = { ...crawler, vehicle, places: everyPart, ledger: [line("Frame", 0.1, at(0.05, 0.01))] };

describe("the centre of gravity from places", () => {
  it("is the mean of all places by mass, pieces of a line together, and counts in the prediction", () => {
    const { centre, isWhole } = balanceOf(book, build);
    // The demo: rotor 8.485 g, motor 19 g, skirt 11 g, pack 29 g; the frame's two pieces 200 g.
    const masses = [8.485, 19, 11, 29, 200];
    const mean = (of: readonly number[]) =>
      of.reduce((sum, each, i) => sum + masses[i] * each, 0) / masses.reduce((sum, each) => sum + each, 0);
    expect(isWhole).toBe(true);
    expect(centre?.fromRear).toBeCloseToRelative(mean([0.06, 0.06, 0.06, 0.02, 0.05]), 1e-12);
    expect(centre?.height).toBeCloseToRelative(mean([0.02, 0.035, 0.002, 0.03, 0.01]), 1e-12);
    expect(solvable(resolveBuild(book, build))?.vehicle).toMatchObject({
      cgFromRear: centre?.fromRear,
      cgHeight: centre?.height,
    });
  });

  it("leaves the numbers typed where one line has no place", () => {
    const half = { ...build, ledger: [...build.ledger, line("Camera", 0.05)] };
    const { centre, isWhole } = balanceOf(book, half);
    expect(isWhole).toBe(false);
    expect(centre?.fromRear).toBeCloseToRelative(balanceOf(book, build).centre?.fromRear ?? 0, 1e-12);
    expect(withMass(book, half).vehicle.cgHeight).toBe(crawler.vehicle.cgHeight);
  });

  it("counts beside a number typed for the whole too", () => {
    const whole = { ...build, vehicle: crawler.vehicle };
    expect(withMass(book, whole).vehicle).toMatchObject({ mass: crawler.vehicle.mass });
    expect(withMass(book, whole).vehicle.cgHeight).toBe(balanceOf(book, whole).centre?.height);
  });

  it("decides what tips: the same masses twice as high leave less margin against tipping on the wall", () => {
    const higher = (factor: number): Build => ({
      ...build,
      ledger: [line("Mast", 0.1, at(0.05, 0.05 * factor))],
    });
    const tip = (of: Build) => {
      const input = solvable(resolveBuild(book, of));
      return input ? (predictAny(input, [90]).attitudes[0].margins.tip ?? Number.NaN) : Number.NaN;
    };
    expect(tip(higher(2))).toBeLessThan(tip(higher(1)));
  });
});

describe("what a piece weighs by its drawing", () => {
  it("of a print is density by volume, walls solid, the inside as full as it is printed", () => {
    const cube = { by: "volume", material: "pla", volume: 1e-6, infill: 1 } as const;
    // PLA: 1.24 g/cm³.
    expect(madeMass(cube).mass).toBeCloseToRelative(1.24e-3, 1e-12);
    expect(madeMass({ ...cube, infill: 0.2 }).mass).toBeCloseToRelative(0.248e-3, 1e-12);
    // 6 cm² of 0.5 mm walls are 0.3 cm³; of the other 0.7 cm³ a fifth.
    const walled = { ...cube, infill: 0.2, surface: 6e-4, wall: 0.5e-3 };
    expect(madeMass(walled).mass).toBeCloseToRelative(1.24e-3 * (0.3 + 0.2 * 0.7), 1e-12);
    expect(madeMass({ ...walled, wall: 0.05 }).mass).toBeCloseToRelative(1.24e-3, 1e-12);
  });

  it("of a sheet is density by area and thickness, a density of one's own in the place of the table's", () => {
    const sheet = { by: "sheet", material: "aluminium", area: 0.01, thickness: 0.5e-3 } as const;
    // Aluminium 2.70 g/cm³: 100 cm² by 0.05 cm.
    expect(madeMass(sheet).mass).toBeCloseToRelative(13.5e-3, 1e-12);
    expect(madeMass({ ...sheet, density: 1000 }).mass).toBeCloseToRelative(5e-3, 1e-12);
    expect(isPrinted(sheet)).toBe(false);
  });

  it("stands in the ledger as an estimate until a mass is typed for it", () => {
    const drawn = {
      ...line("Cover", 0),
      mass: undefined,
      basis: "estimated" as const,
      made: { by: "volume", material: "petg", volume: 40e-6, infill: 0.5 } as const,
    };
    const linesOf = (ledger: Build["ledger"]) => ledgerOf(book, { ...build, ledger }).lines.at(-1);
    expect(linesOf([drawn])).toMatchObject({ basis: "estimated", mass: expect.closeTo(0.0254, 12) });
    expect(linesOf([drawn])?.uncertainty).toBeGreaterThan(0);
    expect(linesOf([{ ...drawn, mass: 0.024, basis: "weighed" }])).toMatchObject({
      basis: "weighed",
      mass: 0.024,
    });
  });

  it("has densities that every source can be asked for", () => {
    for (const { density, spread, source } of Object.values(DENSITIES)) {
      expect(density).toBeGreaterThan(0);
      expect(spread).toBeGreaterThan(0);
      expect(source.length).toBeGreaterThan(10);
    }
  });
});
