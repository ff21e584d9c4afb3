import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { familiesOf } from "#shared/book/size/families.ts";
import { bookOfNeed, isTyped, withDrawn } from "#shared/book/size/need/bookOfNeed.ts";
import type { TypedNeed } from "#shared/book/size/need/typedNeed.ts";
import { sideOf } from "#shared/book/size/sides.ts";
import { sizableBuild } from "#shared/book/size/sizable.ts";
import { byCollection } from "#shared/model/collections.ts";
import { COLLECTIONS } from "#shared/model/schemas.ts";
import { torqueConstant } from "#shared/physics/motor.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("The demo has it.");
  return value;
}
const EMPTY: Book = byCollection<never[]>(() => []);
const DRAWN = { blades: 7, exitAngle: 40, inletRatio: 0.5, widthRatio: 0.12 };
const NEED: TypedNeed = {
  numbers: {
    mass: 0.2,
    wheelbase: 0.12,
    track: 0.1,
    cgHeight: 0.025,
    wheelFriction: 0.65,
    roughness: 2e-5,
    perimeter: 0.36,
    area: 0.0085,
    land: 0.003,
    gap: 0.0005,
    skirtFriction: 0.3,
    series: 2,
    capacity: 1620,
    minimumVoltage: 3,
    cellResistance: 0.025,
    wireResistance: 0.015,
    kv: 5000,
    resistance: 0.2,
    noLoadCurrent: 0.5,
    thermalResistance: 10,
  },
  parts: { surface: null, skirt: null, pack: null, motor: null },
  edge: "square",
};

describe("bookOfNeed", () => {
  const typed = bookOfNeed(withDrawn(EMPTY, [DRAWN], 0.045), NEED, 0.045);

  it("on an empty bench with a drawn rotor: a build with every number that was typed", () => {
    const input = solvable(resolveBuild(typed.book, typed.build.data));
    expect(input).toMatchObject({
      motor: { kv: 5000, resistance: 0.2, thermalResistance: 10 },
      pack: { series: 2, parallel: 1, cellResistance: 0.025, wireResistance: 0.015 },
      skirt: { perimeter: 0.36, area: 0.0085, gap: 0.0005, roughness: 2e-5, land: 0.003 },
      vehicle: { mass: 0.2, wheelFriction: 0.65, skirtFriction: 0.3, wheelbase: 0.12, cgFromRear: 0.06 },
    });
    expect(input && predictAny(input).suction).toBeGreaterThan(0);
  });

  it("each typed record: what its schema takes, word for word, so that it can be stored", () => {
    const { surfaces, skirts, packs, motors, rotors } = typed.book;
    for (const [name, records] of Object.entries({ surfaces, skirts, packs, motors, rotors }))
      for (const { id, data } of records) {
        expect(isTyped(id)).toBe(true);
        expect(COLLECTIONS[name as "skirts"].parse(data)).toEqual(data);
      }
    const { rotor: _r, motor: _m, pack: _p, skirt: _k, surface: _s, ...own } = typed.build.data;
    const named = { rotor: "a", motor: "b", pack: "c", skirt: "d", surface: "e" };
    expect(COLLECTIONS.builds.parse({ ...own, ...named })).toEqual({ ...own, ...named });
  });

  it("with parts of the book: theirs, no typed ones", () => {
    const parts = { surface: "side-pane", skirt: "square-lip", pack: "two-cell-450", motor: "bell-18" };
    const { build } = bookOfNeed(book, { ...NEED, parts }, 0.045);
    expect(build.data).toMatchObject({ ...parts, rotor: book.rotors[0].id });
  });

  it("without any family: no rotor, and no side to size", () => {
    const bare = bookOfNeed(EMPTY, NEED, 0.045);
    expect(bare.build.data.rotor).toBe("");
    const asked = { motor: "typed motor", cellVoltage: 3.7 };
    expect(sideOf(bare.book, bare.build.data, "ducted", asked)).toBeNull();
  });
});

describe("sideOf", () => {
  const asked = { motor: "bell-22", cellVoltage: 3.7 };
  const crawler = present(book.builds.find(({ id }) => id === "pane-crawler")?.data);

  it("of a ducted build as an open one: its propellers, no skirt, the need of a vehicle without one", () => {
    const side = sideOf(book, crawler, "propeller", asked);
    expect(side?.families.map(({ id }) => id)).toEqual(
      familiesOf(book, "propeller", "").families.map(({ id }) => id),
    );
    expect(side?.build.skirt).toBeNull();
    expect(side?.numbers.vehicle.skirtShare).toBe(0);
  });

  it("has the strength of the motor that is named, its own strength at its own winding", () => {
    const { constants } = present(resolveBuild(book, { ...crawler, motor: "bell-22" }).motor);
    const side = sideOf(book, crawler, "ducted", asked);
    expect(side?.numbers.motor.motorConstant).toBeCloseToRelative(
      torqueConstant(constants.kv) / Math.sqrt(constants.resistance),
      1e-12,
    );
  });

  it("of a build whose own rotor has no curve: another family's numbers stand in, and it is left out by name", () => {
    const bare = {
      ...book.rotors[0],
      id: "bare",
      data: { ...book.rotors[0].data, name: "Bare", geometry: undefined },
    };
    const withBare = { ...book, rotors: [...book.rotors, bare] };
    const build = { ...crawler, rotor: "bare" };
    expect(sizableBuild(withBare, build, "bell-22").rotor).toBe(book.rotors[0].id);
    const side = sideOf(withBare, build, "ducted", asked);
    expect(side?.leftOut.map(({ name }) => name)).toContain("Bare");
  });
});
